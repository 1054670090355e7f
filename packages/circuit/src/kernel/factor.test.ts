import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { allocateFactor, refactor, solveFactored } from "./factor";
import { choosePivotOrder } from "./ordering";
import { createPatternBuilder } from "./pattern";
import { analyse } from "./symbolic";

type Place = readonly [row: number, column: number, value: number];

/** Builds a system from values by place; the ground column follows from the zero row sums. */
function build(nodeCount: number, size: number, places: readonly Place[]) {
  const builder = createPatternBuilder(nodeCount, size);
  for (const [row, column] of places) {
    builder.entry(row, column);
    builder.entry(row, size);
  }
  const pattern = builder.finish();
  const values = new Float64Array(pattern.rows.length);
  for (const [row, column, value] of places) {
    values[builder.entry(row, column)] += value;
    if (column < nodeCount) values[builder.entry(row, size)] -= value;
  }
  return { pattern, values };
}

/** Conductances between nodes, with the ground column written exactly. */
function conductances(size: number, list: readonly (readonly [number, number, number])[]) {
  const builder = createPatternBuilder(size, size);
  const stamp = (values: Float64Array | undefined) => {
    for (const [a, b, g] of list) {
      for (const [row, column, value] of [
        [a, a, g],
        [a, b, -g],
        [b, a, -g],
        [b, b, g],
      ] as const) {
        const entry = builder.entry(row, column);
        if (values) values[entry] += value;
      }
    }
  };
  stamp(undefined);
  const pattern = builder.finish();
  const values = new Float64Array(pattern.rows.length);
  stamp(values);
  return { pattern, values };
}

function factorise({ pattern, values }: ReturnType<typeof build>) {
  const outcome = choosePivotOrder(pattern, values);
  if (!outcome.ok) throw new Error(`row ${outcome.singularRow} has no pivot`);
  const factor = allocateFactor(analyse(pattern, outcome.order));
  const matrix = { siemens: new Float64Array(0), stamped: values, leak: new Float64Array(0), shunt: 0 };
  expect(refactor(factor, matrix, new Uint8Array(pattern.size + 1).fill(1))).toBe(-1);
  return factor;
}

describe("factorisation", () => {
  it("rebuilds the permuted matrix as L·U", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 12 }),
        fc.array(fc.tuple(fc.nat(), fc.nat(), fc.double({ min: -1, max: 1, noNaN: true })), {
          maxLength: 60,
        }),
        (size, raw) => {
          // A heavy diagonal keeps the random matrix far from singular.
          const places: Place[] = Array.from({ length: size }, (_, i) => [i, i, 50] as const);
          for (const [i, j, value] of raw) places.push([i % size, j % size, value]);
          const system = build(Math.ceil(size / 2), size, places);
          const { symbolic: s, lu } = factorise(system);
          const dense = Array.from({ length: size }, () => new Float64Array(size));
          for (const [row, column, value] of places) dense[row][column] += value;
          const lower = Array.from({ length: size }, (_, i) =>
            Float64Array.from({ length: size }, (_, j) => +(i === j)),
          );
          const upper = Array.from({ length: size }, () => new Float64Array(size));
          for (let row = 0; row < size; row++) {
            for (let at = s.lowerStart[row]; at < s.pivotPlace[row]; at++)
              lower[row][s.columnAt[at]] = lu[at];
            for (let at = s.pivotPlace[row]; at < s.groundPlace[row]; at++)
              upper[row][s.columnAt[at]] = lu[at];
          }
          for (let i = 0; i < size; i++) {
            for (let j = 0; j < size; j++) {
              let sum = 0;
              for (let k = 0; k < size; k++) sum += lower[i][k] * upper[k][j];
              expect(sum).toBeCloseTo(dense[s.order.rows[i]][s.order.columns[j]], 9);
            }
          }
        },
      ),
    );
  });

  it("keeps a 1e-12 S leak beside 1e7 S to the last digits", () => {
    const size = 30;
    const chain = Array.from({ length: size - 1 }, (_, i) => [i, i + 1, 1e7] as const);
    const factor = factorise(conductances(size, [...chain, [0, size, 1e-12]]));
    const rightSide = new Float64Array(size);
    rightSide[size - 1] = 1e-12;
    const volts = new Float64Array(size);
    solveFactored(factor, rightSide, volts);
    for (const value of volts) expect(value).toBeCloseTo(1, 13);
  });

  it("makes no fill on a chain and little on a grid", () => {
    const size = 200;
    const chain = Array.from({ length: size }, (_, i) => [i, i + 1, 1] as const);
    const { symbolic } = factorise(conductances(size, chain));
    expect(symbolic.lowerColumn.length).toBe(size - 1);
    const side = 20;
    const grid: [number, number, number][] = [[0, side * side, 1]];
    for (let i = 0; i < side * side; i++) {
      if (i % side !== side - 1) grid.push([i, i + 1, 1]);
      if (i + side < side * side) grid.push([i, i + side, 1]);
    }
    // Banded elimination would need about side³ = 8000 entries below the diagonal.
    expect(factorise(conductances(side * side, grid)).symbolic.lowerColumn.length).toBeLessThan(3500);
  });

  it("names a row without a pivot", () => {
    const { pattern, values } = build(2, 2, [
      [0, 0, 1],
      [0, 1, 1],
      [1, 0, 0],
      [1, 1, 0],
    ]);
    const outcome = choosePivotOrder(pattern, values);
    expect(outcome).toEqual({ ok: false, singularRow: 1 });
  });
});
