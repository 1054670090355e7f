import { beforeAll, expect, test } from "vitest";
import type { Sheet } from "../geometry";
import { conductorsOnConductors, conductorsThroughSymbols, overlappingLabels, segmentsOf } from "../quality";
import { smallVehicle } from "../testing/small-vehicle";
import { layoutDrawing, layoutSheet } from "./layout-sheet";
import { type BaseDrawing, dragOnDrawing, placeOnDrawing } from "./place-on-drawing";

let base: BaseDrawing;
let untouched: Sheet;
beforeAll(async () => {
  const result = await layoutDrawing(smallVehicle, "fan");
  if (!result.ok) throw new Error(result.error.code);
  base = result.value;
  untouched = placeOnDrawing(smallVehicle, base, {});
}, 60_000);

const symbolOf = (sheet: Sheet, id: string) => {
  const symbol = sheet.symbols.find((one) => one.id === id);
  if (symbol === undefined) throw new Error(`${id} is not drawn`);
  return symbol;
};

test.each(["M1", "XS1", "XE1", "A1"])(
  "a drag of %s gives the same sheet as laying out with that place",
  async (id) => {
    const { x, y } = symbolOf(untouched, id);
    const to = { x: x + 31, y: y + 17 };
    const dragged = dragOnDrawing(smallVehicle, base, {}, { designator: id, to });
    const laidOut = await layoutSheet({ ...smallVehicle, drawing: { placed: { fan: { [id]: to } } } }, "fan");
    expect(laidOut).toEqual({ ok: true, value: dragged });
    expect(symbolOf(dragged, id)).toMatchObject(to);
  },
);

test("an in-line connector is placed by the left end of its boundary", () => {
  const from = untouched.connectors.find(({ id }) => id === "X7")?.from ?? { x: 0, y: 0 };
  const to = { x: from.x + 40, y: from.y };
  const moved = placeOnDrawing(smallVehicle, base, { X7: to });
  expect(moved.connectors.find(({ id }) => id === "X7")?.from).toEqual(to);
});

test("conductors follow at right angles, clear of symbols, of each other and of texts", () => {
  const { x, y } = symbolOf(untouched, "E1");
  const moved = placeOnDrawing(smallVehicle, base, { E1: { x: untouched.width + 60, y } });
  expect(symbolOf(moved, "E1").x).not.toBe(x);
  expect(conductorsThroughSymbols(moved)).toEqual([]);
  expect(conductorsOnConductors(moved)).toEqual([]);
  expect(overlappingLabels(moved)).toEqual([]);
  expect(moved.width).toBeGreaterThan(untouched.width);
  for (const { points } of moved.conductors) {
    for (const { a, b } of segmentsOf(points)) expect(a.x === b.x || a.y === b.y).toBe(true);
  }
});

test("what is not on the sheet is passed over", () => {
  expect(placeOnDrawing(smallVehicle, base, { Z99: { x: 1, y: 1 } })).toEqual(untouched);
});
