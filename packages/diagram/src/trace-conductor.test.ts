import { expect, test } from "vitest";
import { smallVehicle } from "./testing/small-vehicle";
import { traceConductor } from "./trace-conductor";

test("a path runs through an in-line connector and ends at the components", () => {
  expect(traceConductor(smallVehicle, "W7")).toEqual({
    conductors: ["W6", "W7"],
    cavities: ["X1.3:h", "X1.3:c", "X7.1:h", "X7.1:b"],
    splices: [],
    ends: ["A1:M", "M1:1"],
  });
});

test("a splice joins its branches; a fuse ends the path", () => {
  const trace = traceConductor(smallVehicle, "W3");
  expect(new Set(trace?.conductors)).toEqual(new Set(["W2", "W3", "W4"]));
  expect(trace?.splices).toEqual(["XS1"]);
  expect(new Set(trace?.ends)).toEqual(new Set(["F1:2", "S1:1", "A1:30"]));
});

test("every conductor of one path gives the same path", () => {
  for (const { id } of smallVehicle.conductors) {
    const trace = traceConductor(smallVehicle, id);
    expect(trace?.conductors).toContain(id);
    for (const other of trace?.conductors ?? []) expect(traceConductor(smallVehicle, other)).toEqual(trace);
  }
});

test("an unknown conductor has no path", () => {
  expect(traceConductor(smallVehicle, "W999")).toBeUndefined();
});
