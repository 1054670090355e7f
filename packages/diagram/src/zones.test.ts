import { expect, test } from "vitest";
import { rowLetter, zoneOf, zonesFor } from "./zones";

test("zones are named by letter and number from the upper left (ISO 5457)", () => {
  const zones = zonesFor(776, 776);
  expect([zones.columns, zones.rows]).toEqual([4, 4]);
  expect(zoneOf({ zones }, { x: 30, y: 30 })).toBe("A1");
  expect(zoneOf({ zones }, { x: 28 + 3.5 * 180, y: 28 + 2.5 * 180 })).toBe("C4");
});

test("what lies outside the frame belongs to the nearest zone", () => {
  const zones = zonesFor(776, 776);
  expect(zoneOf({ zones }, { x: -50, y: 5000 })).toBe("D1");
});

test("letters skip I and O", () => {
  expect(Array.from({ length: 15 }, (_, row) => rowLetter(row)).join("")).toBe("ABCDEFGHJKLMNPQ");
});
