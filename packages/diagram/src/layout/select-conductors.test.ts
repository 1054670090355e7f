import type { VehicleDocument } from "@probeworthy/vehicle";
import { expect, test } from "vitest";
import { smallVehicle } from "../testing/small-vehicle";
import { findBars } from "./branches";
import { resolveEnd } from "./conductor-ends";
import { selectConductors } from "./select-conductors";

/** The fan without its battery and fuse, which a supply system lists; two fuses hang on one bar. */
const split: VehicleDocument = {
  ...smallVehicle,
  splices: [...smallVehicle.splices, { id: "XS9", title: "Terminal 30 bar" }],
  conductors: [
    ...smallVehicle.conductors.filter(({ id }) => id !== "W1" && id !== "W90"),
    { id: "W1", from: "XS9", to: "F1:1", colour: "RD", squareMillimetres: 6, metres: 1 },
    { id: "W90", from: "XS9", to: "F2:1", colour: "RD", squareMillimetres: 2.5, metres: 1 },
    { id: "W92", from: "G1:+", to: "XS9", colour: "RD", squareMillimetres: 10, metres: 1 },
    { id: "W93", from: "F2:2", to: "R1:2", colour: "RDGN", squareMillimetres: 1, metres: 1 },
  ],
  systems: [
    {
      ...(smallVehicle.systems[0] as VehicleDocument["systems"][number]),
      components: ["S1", "A1", "M1", "B1"],
    },
    {
      id: "supply",
      title: "Supply",
      components: ["G1", "F2", "E1", "R1"],
      howItWorks: [],
      normalSurprises: [],
      cautions: [],
      chart: [],
    },
  ],
};

function selected(systemId: string) {
  const resolved = split.conductors.flatMap(({ id, from, to }) => {
    const [a, b] = [resolveEnd(split, from), resolveEnd(split, to)];
    return a === undefined || b === undefined ? [] : [{ id, from: a, to: b }];
  });
  return selectConductors(split, resolved, systemId);
}

test("a splice that feeds two fuses is a bar", () => {
  expect([...findBars(split)]).toEqual(["XS9"]);
});

test("the path goes up to the fuse and stops at the bar", () => {
  const ids = selected("fan").conductors.map(({ id }) => id);
  expect(ids).toEqual(expect.arrayContaining(["W1", "W2", "W3", "W4", "W5", "W10", "W12"]));
  expect(ids).not.toContain("W90");
  expect(ids).not.toContain("W92");
});

test("a lamp of another system is an arrow to its sheet, drawn by the conductor that reaches it", () => {
  const fan = selected("fan");
  const lamp = fan.conductors.find(({ id }) => id === "W14");
  expect([lamp?.from.kind, lamp?.to.kind]).toContain("reference");
  expect([...fan.outside.values()]).toEqual([{ designator: "E1", terminal: "1", systems: ["supply"] }]);
});

test("every conductor is on a sheet, and on none twice", () => {
  const all = new Set(
    ["fan", "supply"].flatMap((id) => selected(id).conductors.map((conductor) => conductor.id)),
  );
  expect([...all].sort()).toEqual(split.conductors.map(({ id }) => id).sort());
  const ids = selected("fan").conductors.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
});
