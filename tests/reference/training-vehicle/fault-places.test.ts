import { trainingVehicle } from "@probeworthy/training-vehicle";
import {
  type Fault,
  faultAt,
  faultKinds,
  listFaultPlaces,
  prepareVehicle,
  settle,
  startState,
} from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";

/** What a place does not say of a fault. */
const rest: Partial<Record<Fault["kind"], Record<string, string | number>>> = {
  shortToSupply: { supply: "G1:+" },
  intermittent: { condition: "harnessMoved", is: "dash" },
  weakBattery: { internalOhmsFactor: 3 },
};

describe("places of faults in the whole car", () => {
  it.each(faultKinds)("has places for %s, and a car with it can be started", (kind) => {
    const places = listFaultPlaces(trainingVehicle, kind);
    expect(places.length).toBeGreaterThan(0);
    const place = places[Math.floor(places.length / 2)];
    if (!place) return;
    const vehicle = prepareVehicle(trainingVehicle, [faultAt(kind, place, undefined, rest[kind])]);
    expect(vehicle.ok, place.title).toBe(true);
    if (!vehicle.ok) return;
    const state = startState(vehicle.value, { key: "on" });
    expect(state.ok && settle(vehicle.value, state.value).ok, place.title).toBe(true);
  });
});
