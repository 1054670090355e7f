import type { HarnessPart } from "../harness";
import { wire } from "../harness";

/** Battery, alternator, starter, their heavy cables and the two straps that close the circuit through the body. */
export const batteryAndCharging: HarnessPart = {
  components: [
    {
      kind: "battery",
      id: "G1",
      title: "Battery 12 V 52 Ah",
      place: "engine bay, left",
      capacityAmpereHours: 52,
      internalOhms: 0.0056,
      stateOfCharge: 0.92,
    },
    {
      kind: "chargingSource",
      id: "G2",
      title: "Alternator 95 A",
      place: "front of the engine",
      regulatedVolts: 14.3,
      outputOhms: 0.006,
      limitAmps: 95,
      speedCondition: "engineSpeed",
      minimumSpeed: 600,
    },
    {
      // The solenoid's own control circuit is not part of this vehicle's wiring yet: its contact follows the key.
      kind: "switch",
      id: "S2",
      title: "Starter solenoid contact",
      place: "on the starter motor",
      terminals: ["30", "45"],
      condition: "key",
      positions: { off: [], accessory: [], on: [], start: [["30", "45"]] },
      contactOhms: 0.0006,
    },
    {
      // "Held against its load": the winding figure is the starter's effective resistance at cranking speed.
      kind: "motor",
      id: "M2",
      title: "Starter motor",
      place: "rear of the engine",
      windingOhmsAt20: 0.068,
      torquePerAmp: 0.011,
      heat: {
        windingToHousing: 0.09,
        housingToAmbient: 0.7,
        windingCapacity: 900,
        housingCapacity: 2600,
        ambientCondition: "ambientTemperature",
      },
    },
  ],
  splices: [
    { id: "XS1", title: "Bus bar of the pre-fuse box", place: "pre-fuse box on the battery" },
    { id: "XS2", title: "Engine block", place: "metal of the engine: alternator case, starter case" },
  ],
  groundPoints: [
    { id: "XE1", title: "Battery negative to body", place: "left inner wing, beside the battery" },
    { id: "XE2", title: "Engine to body", place: "right engine mount" },
  ],
  conductors: [
    wire("W1", "G1:+", "XS1", "RD", 35, 0.25),
    wire("W5", "G1:-", "XE1", "BK", 35, 0.45),
    wire("W6", "G2:31", "XS2", "BK", 25, 0.1),
    wire("W7", "F3:2", "G2:B+", "RDBK", 25, 1.1),
    wire("W8", "G1:+", "S2:30", "RD", 25, 0.9),
    wire("W9", "S2:45", "M2:1", "RD", 25, 0.06),
    wire("W10", "M2:2", "XS2", "BK", 25, 0.1),
    wire("W11", "XS2", "XE2", "BK", 25, 0.35),
  ],
};
