import { trainingVehicle } from "@probeworthy/training-vehicle";
import type { VehicleDocument } from "@probeworthy/vehicle";
import { beforeAll, describe, expect, test } from "vitest";
import type { Sheet } from "../geometry";
import {
  conductorsOnConductors,
  conductorsThroughSymbols,
  countCrossings,
  labelBox,
  overlappingLabels,
  segmentsOf,
} from "../quality";
import { smallVehicle } from "../testing/small-vehicle";
import { layoutSheet } from "./layout-sheet";

async function sheetOf(document: VehicleDocument, system: string): Promise<Sheet> {
  const result = await layoutSheet(document, system);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value;
}

const cases = [
  { name: "bench rig", document: smallVehicle, system: "fan", crossings: 2 },
  { name: "training vehicle", document: trainingVehicle, system: "power-steering", crossings: 14 },
] as const;

describe.each(cases)("$name", ({ document, system, crossings }) => {
  let sheet: Sheet;
  beforeAll(async () => {
    sheet = await sheetOf(document, system);
  }, 120_000);

  test("no conductor runs through a symbol or along another one", () => {
    expect(conductorsThroughSymbols(sheet)).toEqual([]);
    expect(conductorsOnConductors(sheet)).toEqual([]);
  });

  test("crossings stay few", () => {
    expect(countCrossings(sheet)).toBeLessThanOrEqual(crossings);
  });

  test("every conductor is labelled with its code and no label covers anything", () => {
    for (const conductor of sheet.conductors) {
      expect(conductor.labels.map((label) => label.lines[0])).toContain(conductor.colour.join(""));
    }
    expect(overlappingLabels(sheet)).toEqual([]);
  });

  test("conductors are orthogonal and lie inside the frame with their labels", () => {
    const { frame } = sheet.zones;
    const isInside = (x: number, y: number) =>
      x >= frame.x && y >= frame.y && x <= frame.x + frame.width && y <= frame.y + frame.height;
    for (const conductor of sheet.conductors) {
      for (const { a, b } of segmentsOf(conductor.points)) expect(a.x === b.x || a.y === b.y).toBe(true);
      for (const point of conductor.points) expect(isInside(point.x, point.y)).toBe(true);
      for (const label of conductor.labels) {
        const box = labelBox(label);
        expect(isInside(box.x, box.y) && isInside(box.x + box.width, box.y + box.height)).toBe(true);
      }
    }
  });

  test("the supply rail is above everything wired, the ground rings below", () => {
    const rail = sheet.symbols.find((symbol) => symbol.kind === "rail");
    const rings = sheet.testPoints.filter((point) => point.kind === "ring");
    const ys = sheet.conductors.flatMap((conductor) => conductor.points.map((point) => point.y));
    expect(rail?.y).toBe(Math.min(...ys));
    expect(Math.min(...rings.map((ring) => ring.y))).toBe(Math.max(...ys));
  });

  test("every test point is drawn once and has 24 px to itself among those shown together", () => {
    const ids = sheet.testPoints.map((point) => point.pointId);
    expect(new Set(ids).size).toBe(ids.length);
    sheet.testPoints.forEach((one, index) => {
      for (const other of sheet.testPoints.slice(index + 1)) {
        const apart = Math.max(Math.abs(one.x - other.x), Math.abs(one.y - other.y));
        expect.soft(apart, `${one.pointId} and ${other.pointId}`).toBeGreaterThanOrEqual(24);
      }
    });
  });

  test("every conductor ends on a test point, a bar, the rail or an arrow to another sheet", () => {
    const places = [...sheet.testPoints, ...(sheet.references ?? []).map(({ at }) => at)];
    const ends = new Set(places.map(({ x, y }) => `${x},${y}`));
    const bars = sheet.symbols.filter((symbol) => ["splice", "rail", "ground"].includes(symbol.kind));
    for (const conductor of sheet.conductors) {
      for (const end of [conductor.points[0], conductor.points.at(-1)]) {
        if (end === undefined) throw new Error(`${conductor.id} has no points`);
        const isOnBar = bars.some((bar) => bar.y === end.y && end.x >= bar.x && end.x <= bar.x + bar.width);
        expect(isOnBar || ends.has(`${end.x},${end.y}`), `${conductor.id} at ${end.x},${end.y}`).toBe(true);
      }
    }
  });

  test("the same document gives the same bytes", async () => {
    expect(JSON.stringify(await sheetOf(structuredClone(document), system))).toBe(JSON.stringify(sheet));
  }, 120_000);
});

describe("what is on the bench rig's sheet", () => {
  let sheet: Sheet;
  beforeAll(async () => {
    sheet = await sheetOf(smallVehicle, "fan");
  });

  test("the system and what its conductors reach, and nothing else", () => {
    const components = sheet.symbols.map((symbol) => symbol.id);
    expect(components).toEqual(
      expect.arrayContaining(["G1", "F1", "S1", "A1", "M1", "B1", "E1", "XS1", "XE1", "XE2"]),
    );
    expect(components).not.toContain("F2");
    expect(components).not.toContain("R1");
    expect(sheet.conductors.map((conductor) => conductor.id)).not.toContain("W90");
  });

  test("every kind of point is there", () => {
    const ids = sheet.testPoints.map((point) => point.pointId);
    expect(ids).toEqual(
      expect.arrayContaining([
        "X1.5:h",
        "X1.5:c",
        "X7.1:h",
        "X7.1:b",
        "F1:1",
        "F1:2:p",
        "G1:+",
        "G1:-",
        "M1:1",
        "XE1:ring",
        "XE1:body",
        "body",
      ]),
    );
  });

  test("supply enters a module from above, its ground leaves below", () => {
    const module = sheet.symbols.find((symbol) => symbol.id === "A1");
    const side = (name: string) => module?.terminals.find((terminal) => terminal.name === name)?.side;
    expect([side("15"), side("30"), side("31"), side("M")]).toEqual(["top", "top", "bottom", "bottom"]);
  });
});

test("an unknown system and a dangling conductor are told, not thrown", async () => {
  expect(await layoutSheet(smallVehicle, "brakes")).toEqual({
    ok: false,
    error: { code: "unknown_system", systemId: "brakes" },
  });
  const broken = structuredClone(smallVehicle);
  const first = broken.conductors[0];
  if (first !== undefined) first.to = "F77:1";
  expect(await layoutSheet(broken, "fan")).toEqual({
    ok: false,
    error: { code: "dangling_conductor", conductor: "W1", path: "conductors[0].to", end: "F77:1" },
  });
});
