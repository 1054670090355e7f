import { type CircuitElement, operatingPoint, prepareCircuit } from "@probeworthy/circuit";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { type NgspiceEngine, startEngine } from "./ngspice-engine";

// Devices known by points of their curve. "Closed form" is computed here by another route than the package's.

type Points = readonly (readonly [volts: number, amps: number])[];

const unwrap = <T>(result: { ok: true; value: T } | { ok: false; error: { message: string } }): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const solved = (elements: readonly CircuitElement[]) => unwrap(operatingPoint({ ground: "0", elements }));
const source = (volts: number, positive = "a"): CircuitElement => ({
  kind: "voltageSource",
  id: `v${positive}`,
  positive,
  negative: "0",
  volts,
});
const resistor = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const curve = (points: Points, more: object = {}): CircuitElement =>
  ({ kind: "curve", id: "c", a: "a", b: "0", points, ...more }) as CircuitElement;
const ampsAt = (points: Points, volts: number, more: object = {}) =>
  solved([source(volts), curve(points, more)]).amps("c");

const exact = (value: number, expected: number, relative = 1e-12, absolute = 0) =>
  expect(Math.abs(value - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + absolute);

/** Rising curves of every kind: flats, steps of many decades, and [0, 0] among them. */
const rising: fc.Arbitrary<Points> = fc
  .tuple(
    fc.array(
      fc.tuple(
        fc.double({ min: -2, max: 1, noNaN: true }),
        fc.oneof(fc.constant(-Infinity), fc.double({ min: -6, max: 1.5, noNaN: true })),
      ),
      { minLength: 1, maxLength: 12 },
    ),
    fc.nat(),
  )
  .map(([steps, pick]) => {
    const points: [number, number][] = [[0, 0]];
    for (const [width, rise] of steps) {
      const [volts, amps] = points[points.length - 1] ?? [0, 0];
      points.push([volts + 10 ** width, amps + 10 ** rise]);
    }
    // Any of the points becomes the origin.
    const [volts, amps] = points[pick % points.length] ?? [0, 0];
    return points.map(([v, i]) => [v - volts, i - amps] as const);
  });

describe("a curve through points", () => {
  it("passes through every point", () => {
    fc.assert(
      fc.property(rising, (points) => {
        // A leak of 1e-12 S lies across every device.
        for (const [volts, amps] of points) exact(ampsAt(points, volts), amps, 1e-9, 1e-10);
      }),
      { numRuns: 50 },
    );
  });

  it("rises, stays between its points and never delivers power", () => {
    const place = fc.double({ min: -0.5, max: 1.5, noNaN: true });
    fc.assert(
      fc.property(rising, place, place, (points, p, q) => {
        const [first, last] = [points[0]?.[0] ?? 0, points.at(-1)?.[0] ?? 0];
        const [v, w] = [Math.min(p, q), Math.max(p, q)].map((part) => first + part * (last - first));
        if (v === undefined || w === undefined) throw new Error("two voltages are drawn");
        const [i, j] = [ampsAt(points, v), ampsAt(points, w)];
        const noise = 1e-12 * (Math.abs(i) + Math.abs(j)) + 1e-15;
        expect(j - i).toBeGreaterThanOrEqual(-noise);
        expect(v * i).toBeGreaterThanOrEqual(-Math.abs(v) * noise);
        for (const [k, [volts, amps]] of points.entries()) {
          const next = points[k + 1];
          if (!next || v < volts || v > next[0]) continue;
          expect(i).toBeGreaterThanOrEqual(amps - 1e-9 * Math.abs(amps) - 1e-10);
          expect(i).toBeLessThanOrEqual(next[1] + 1e-9 * Math.abs(next[1]) + 1e-10);
        }
      }),
      { numRuns: 200 },
    );
  });

  it("stays between the points of a set on which an ordinary spline swings", () => {
    // From memory: the radiochemical data RPN 14 in F. N. Fritsch, R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238.
    const data: Points = [
      [7.99, 0],
      [8.09, 2.76429e-5],
      [8.19, 4.37498e-2],
      [8.7, 0.169183],
      [9.2, 0.469428],
      [10, 0.94374],
      [12, 0.998636],
      [15, 0.999919],
      [20, 0.999994],
    ];
    let before = -1e-9;
    for (let volts = 7.99; volts <= 20; volts += 0.01) {
      const amps = ampsAt(data, volts, { active: true });
      expect(amps).toBeGreaterThanOrEqual(before);
      expect(amps).toBeLessThanOrEqual(0.999994 + 1e-9);
      before = amps;
    }
  });

  it("is a resistor where its points are, and beyond", () => {
    const line: Points = [-1, 0, 0.5, 4].map((v) => [v, v / 47]);
    for (const v of [-9, -1, -0.3, 0.2, 3.9, 40]) exact(ampsAt(line, v), v / 47, 1e-9);
  });

  it("has a continuous slope at each of its points", () => {
    fc.assert(
      fc.property(rising, fc.nat(), (points, pick) => {
        const inner = points.slice(1, -1);
        const point = inner[pick % Math.max(1, inner.length)];
        if (!point) return;
        const gap = Math.min(...points.slice(1).map(([v], k) => v - (points[k]?.[0] ?? 0)));
        const h = 1e-4 * gap;
        const slope = (from: number, to: number) =>
          (ampsAt(points, point[0] + to) - ampsAt(points, point[0] + from)) / (to - from);
        const [left, right] = [slope(-2 * h, -h), slope(h, 2 * h)];
        const steepest = Math.max(
          ...points.slice(1).map(([v, i], k) => {
            const [u, j] = points[k] ?? [0, 0];
            return (i - j) / (v - u);
          }),
        );
        expect(Math.abs(left - right)).toBeLessThanOrEqual(5e-3 * steepest + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  it("follows a smooth curve ever closer as points are added: the error falls at least with the square", () => {
    const sampled = (n: number): Points =>
      Array.from({ length: 2 * n + 1 }, (_, k) => [(k - n) / n, Math.tanh((2 * (k - n)) / n)] as const);
    const error = (n: number) => {
      let worst = 0;
      for (let v = -0.995; v < 1; v += 0.01)
        worst = Math.max(worst, Math.abs(ampsAt(sampled(n), v) - Math.tanh(2 * v)));
      return worst;
    };
    const [coarse, fine] = [error(8), error(16)];
    expect(fine).toBeLessThan(coarse / 4);
    expect(fine).toBeLessThan(1e-3);
  });
});

describe("a square law by points", () => {
  // A parabola's own slopes are those that the points give, so the curve is the parabola: amps = 0.05·v².
  const points: Points = Array.from({ length: 13 }, (_, k) => [k, 0.05 * k * k] as const);

  it.each([0.5, 3, 12, 100])("settles behind %d Ω where the quadratic formula says", (ohms) => {
    // Closed form: 0.05·v²·R + v = 12, less 1e-12 S.
    const volts = (-1 + Math.sqrt(1 + 4 * 0.05 * ohms * 12)) / (2 * 0.05 * ohms);
    exact(solved([source(12, "v"), resistor("r", "v", "a", ohms), curve(points)]).volts("a"), volts, 1e-9);
  });

  let ngspice: NgspiceEngine;
  beforeAll(async () => {
    ngspice = await startEngine();
  });

  it("agrees with a behavioural source of ngspice 45 at every volt", async () => {
    const { columns, complaints } = await ngspice.run([
      "v1 v 0 0",
      "r1 v a 2.2",
      "r2 a b 5",
      "b1 a 0 i=0.05*v(a)^2+1e-12*v(a)",
      "b2 b 0 i=0.05*v(b)^2+1e-12*v(b)",
      ".options reltol=1e-10 abstol=1e-15 vntol=1e-12",
      ".dc v1 0 16 0.25",
    ]);
    const [across, far] = [columns.get("v(a)"), columns.get("v(b)")];
    if (!across || !far) throw new Error(complaints.join("; "));
    expect(across.length).toBe(65);
    for (const [k, volts] of across.entries()) {
      const point = solved([
        source(k / 4, "v"),
        resistor("r1", "v", "a", 2.2),
        resistor("r2", "a", "b", 5),
        curve(points),
        curve(points, { id: "d", a: "b" }),
      ]);
      exact(point.volts("a"), volts, 1e-6, 1e-9);
      exact(point.volts("b"), far[k] ?? Number.NaN, 1e-6, 1e-9);
    }
  });
});

describe("Newton on curves", () => {
  it("needs no continuation, cold or warm, whatever the curve and the source", () => {
    const volts = fc.double({ min: -60, max: 60, noNaN: true });
    const decade = fc.double({ min: -2, max: 5, noNaN: true });
    const bare = { shuntSteps: 0, sourceSteps: 0 };
    fc.assert(
      fc.property(
        rising,
        rising,
        fc.array(fc.tuple(volts, decade), { minLength: 1, maxLength: 4 }),
        (p, q, drives) => {
          const [v, d] = drives[0] ?? [0, 0];
          const circuit = unwrap(
            prepareCircuit({
              ground: "0",
              elements: [
                source(v, "v"),
                resistor("r", "v", "a", 10 ** d),
                curve(p, { b: "m" }),
                curve(q, { id: "d", a: "m" }),
                resistor("m", "m", "0", 1e7),
              ],
            }),
          );
          for (const [supply, ohms] of drives) {
            unwrap(circuit.set("vv", { volts: supply }));
            unwrap(circuit.set("r", { ohms: 10 ** ohms }));
            const point = unwrap(circuit.operatingPoint(bare));
            exact(point.amps("c"), point.amps("d") + point.amps("m"), 1e-6, 1e-11);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe("refusals", () => {
  it.each([
    ["too few points", [[0, 0]], {}],
    ["no points", undefined, {}],
    ["points that are not pairs", [[0, 0], [1]], {}],
    [
      "a NaN",
      [
        [0, 0],
        [1, Number.NaN],
      ],
      {},
    ],
    [
      "an infinity",
      [
        [0, 0],
        [Number.POSITIVE_INFINITY, 1],
      ],
      {},
    ],
    [
      "the same volts twice",
      [
        [0, 0],
        [1, 1],
        [1, 2],
      ],
      {},
    ],
    [
      "falling volts",
      [
        [1, 1],
        [0, 0],
      ],
      {},
    ],
    [
      "falling amps",
      [
        [0, 0],
        [1, 1],
        [2, 0.9],
      ],
      {},
    ],
    [
      "no origin",
      [
        [-1, -1],
        [1, 1],
      ],
      {},
    ],
    [
      "a step",
      [
        [0, 0],
        [1e-12, 1],
      ],
      {},
    ],
  ])("name the points: %s", (_name, points, more) => {
    const result = operatingPoint({
      ground: "0",
      elements: [source(1), curve(points as unknown as Points, more)],
    });
    expect(result).toMatchObject({
      ok: false,
      error: { code: "invalid_element", element: "c", field: "points" },
    });
  });

  it("spare an active device its origin", () => {
    // A cell that supplies 2 A up to 0.4 V and nothing at 0.6 V.
    const cell: Points = [
      [-1, -2],
      [0.4, -2],
      [0.6, 0],
      [0.7, 4],
    ];
    const point = solved([curve(cell, { active: true }), resistor("load", "a", "0", 0.1)]);
    exact(point.volts("a"), 0.2, 1e-9);
  });
});
