import type { Sheet, SheetSymbol } from "@probeworthy/diagram";
import { expect, test } from "vitest";
import { openingPlace } from "./use-opening-view";

const symbol = (id: string, kind: SheetSymbol["kind"], width: number): SheetSymbol => ({
  id,
  kind,
  designator: id,
  title: id,
  partial: false,
  x: 100,
  y: 200,
  width,
  height: 60,
  terminals: [],
  primitives: [],
});

const sheet: Sheet = {
  title: "Two modules",
  width: 1000,
  height: 800,
  symbols: [symbol("M1", "motor", 900), symbol("A2", "module", 120), symbol("A1", "module", 300)],
  conductors: [],
  connectors: [],
  testPoints: [{ pointId: "G1:+", kind: "post", owner: "G1", x: 40, y: 50, side: "top" }],
  links: [],
  zones: { frame: { x: 0, y: 0, width: 1000, height: 800 }, columns: 1, rows: 1 },
};

test("a drawing opens at its largest module, at a lead already placed, else in the middle", () => {
  expect(openingPlace(sheet, undefined)).toEqual({ x: 250, y: 230 });
  expect(openingPlace(sheet, "G1:+")).toMatchObject({ x: 40, y: 50 });
  expect(openingPlace({ ...sheet, symbols: [] }, undefined)).toEqual({ x: 500, y: 400 });
});
