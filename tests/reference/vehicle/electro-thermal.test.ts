import { advance, prepareVehicle, startState } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, must, number, plug, wire } from "./rig";

/**
 * A winding whose resistance grows with its own heat, carrying a regulated current: fixed point
 * T = [Ta + k(1 − 20α)] / (1 − kα), k = Rth·I²·R20, with Rth 1.5 K/W, R20 20 mΩ, Ta 25 °C, α 0.00393 (computed;
 * thermal formulas: firgelliauto.com motor thermal calculator).
 */
const rig = (amps: number) =>
  buildRig({
    conditions: [number("ambient", 25)],
    components: [
      {
        kind: "chargingSource",
        id: "G2",
        title: "Keeps the battery up",
        regulatedVolts: 14,
        outputOhms: 0.005,
        limitAmps: 100,
        speedCondition: "ambient",
        minimumSpeed: 1,
      },
      {
        kind: "module",
        id: "A1",
        title: "Current source",
        terminals: ["30", "31", "P", "M"].map((name) => ({ name, function: name })),
        ground: "31",
        internalGroundOhms: 0.0005,
        supply: { terminal: "30", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.1 },
        outputs: [
          {
            kind: "bridge",
            name: "motor",
            plus: "P",
            minus: "M",
            feed: "30",
            return: "31",
            targetAmps: amps,
            bridgeOhms: 0.008,
            minimumFeedVolts: 6,
          },
        ],
        signals: [],
      },
      {
        kind: "motor",
        id: "M1",
        title: "Motor",
        windingOhmsAt20: 0.02,
        torquePerAmp: 0.05,
        heat: {
          windingToHousing: 0.5,
          housingToAmbient: 1,
          windingCapacity: 50,
          housingCapacity: 200,
          ambientCondition: "ambient",
        },
      },
    ],
    connectors: [plug("X1", "A1", ["30", "31", "P", "M"]), plug("X2", "M1", ["1", "2"])],
    conductors: [
      wire("W2", "G1:+", "X1.1", 0.1, 16),
      wire("W3", "X1.2", "XE1", 0.1, 16),
      wire("W4", "X1.3", "X2.1"),
      wire("W5", "X1.4", "X2.2"),
      wire("W6", "G2:B+", "G1:+", 0.1, 16),
      wire("W7", "G2:31", "XE1", 0.1, 16),
    ],
  });

describe("electro-thermal fixed point", () => {
  it.each([
    [20, 37.84],
    [30, 55.8],
    [40, 85.32],
    [50, 133.43],
    [60, 216.33],
  ])("%i A heat the winding to %f °C", (amps, celsius) => {
    const vehicle = must(prepareVehicle(rig(amps)));
    const state = must(advance(vehicle, must(startState(vehicle)), 20_000));
    expect(state.slow.motors.M1?.winding).toBeCloseTo(celsius, 1);
  });
});
