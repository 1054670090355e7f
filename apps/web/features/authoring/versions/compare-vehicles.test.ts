import { trainingVehicle } from "@probeworthy/training-vehicle";
import { expect, it } from "vitest";
import { setAt } from "../draft/path";
import type { Draft } from "../fields/new-record";
import { compareVehicles } from "./compare-vehicles";

const vehicle: Draft = {
  title: "Bench",
  components: [
    { id: "F1", kind: "fuse", title: "Lamp fuse", ratingAmps: 15 },
    { id: "B1", kind: "thermistor", title: "Sensor", table: [[20, 2500]] },
  ],
  conductors: [{ id: "W1", from: "F1:1", to: "B1:1", colour: "RD", squareMillimetres: 1, metres: 2 }],
};

it("nothing is different from itself", () => {
  expect(compareVehicles(trainingVehicle, structuredClone(trainingVehicle))).toEqual([]);
});

it("says what was added, removed and changed, with both values", () => {
  const rated = setAt(vehicle, ["components", 0, "ratingAmps"], 20);
  const after = setAt(rated, ["conductors"], [{ ...(vehicle.conductors as object[])[0], id: "W2" }]);
  expect(compareVehicles(vehicle, { ...after, title: "Bench 2", drawing: { placed: {} } })).toEqual([
    { kind: "changed", what: "Vehicle", detail: "title “Bench” → “Bench 2”" },
    { kind: "changed", what: "Component F1, Lamp fuse", detail: "ratingAmps 15 → 20" },
    { kind: "added", what: "Conductor W2", detail: "F1:1 to B1:1, RD, 1 mm², 2 m" },
    { kind: "removed", what: "Conductor W1", detail: "" },
    { kind: "changed", what: "Drawing", detail: "places of parts" },
  ]);
});

it("a changed table is one value", () => {
  const after = setAt(vehicle, ["components", 1, "table"], [[20, 2600]]);
  expect(compareVehicles(vehicle, after)).toMatchObject([{ detail: "table [[20,2500]] → [[20,2600]]" }]);
});
