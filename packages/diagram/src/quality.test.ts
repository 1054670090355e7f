import { expect, test } from "vitest";
import type { Position, Sheet, SheetConductor, SheetSymbol } from "./geometry";
import {
  conductorsOnConductors,
  conductorsThroughSymbols,
  countCrossings,
  overlappingLabels,
  textsOutside,
} from "./quality";
import { zonesFor } from "./zones";

const conductor = (id: string, ...points: [number, number][]): SheetConductor => ({
  id,
  colour: ["RD"],
  squareMillimetres: 1,
  from: "F1:1",
  to: "F1:2",
  points: points.map(([x, y]): Position => ({ x, y })),
  labels: [],
});
const box = (id: string, x: number, y: number): SheetSymbol => ({
  id,
  kind: "module",
  designator: id,
  title: id,
  partial: false,
  x,
  y,
  width: 100,
  height: 100,
  terminals: [],
  primitives: [],
});
const sheet = (conductors: SheetConductor[], symbols: SheetSymbol[] = []): Sheet => ({
  title: "test",
  width: 500,
  height: 500,
  symbols,
  conductors,
  connectors: [],
  testPoints: [],
  links: [],
  zones: zonesFor(500, 500),
});

test("a cross counts once, a T not at all", () => {
  const upright = conductor("W1", [100, 0], [100, 200]);
  expect(countCrossings(sheet([upright, conductor("W2", [0, 100], [200, 100])]))).toBe(1);
  expect(countCrossings(sheet([upright, conductor("W2", [100, 100], [200, 100])]))).toBe(0);
});

test("a conductor through a symbol is named, one that ends on its edge is not", () => {
  const symbols = [box("A1", 50, 50)];
  expect(conductorsThroughSymbols(sheet([conductor("W1", [0, 80], [200, 80])], symbols))).toEqual([
    "W1 through A1",
  ]);
  expect(conductorsThroughSymbols(sheet([conductor("W1", [80, 0], [80, 50])], symbols))).toEqual([]);
});

test("conductors on each other are named, side by side not", () => {
  const one = conductor("W1", [100, 0], [100, 200]);
  expect(conductorsOnConductors(sheet([one, conductor("W2", [101, 50], [101, 90])]))).toEqual(["W1 on W2"]);
  expect(conductorsOnConductors(sheet([one, conductor("W2", [120, 50], [120, 90])]))).toEqual([]);
});

test("labels over each other, on a conductor and on a symbol are named", () => {
  const label = (x: number, y: number) => [{ x, y, anchor: "start" as const, lines: ["RD"] }];
  const one = { ...conductor("W1", [10, 0], [10, 400]), labels: label(60, 300) };
  const two = { ...conductor("W2", [65, 0], [65, 400]), labels: label(62, 304) };
  const found = overlappingLabels(sheet([one, two], [box("A1", 50, 250)]));
  expect(found).toContain("W1 over W2");
  expect(found).toContain("text of W1 on W2");
  expect(found).toContain("label W1 on A1");
});

test("writing that is cut by the frame is named, by whose it is", () => {
  const label = (x: number) => [{ x, y: 300, anchor: "start" as const, lines: ["BKGY"] }];
  const inside = { ...conductor("W1", [10, 0], [10, 400]), labels: label(300) };
  const cut = { ...conductor("W2", [465, 0], [465, 400]), labels: label(460) };
  expect(textsOutside(sheet([inside, cut]))).toEqual(["W2"]);
});
