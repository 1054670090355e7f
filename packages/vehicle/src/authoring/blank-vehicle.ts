import type { VehicleDocument } from "../document/vehicle-document";

/**
 * The smallest vehicle that can be simulated: a battery on its two cables, the ground points of body and engine, a key and one
 * empty system. The positive cable ends at a stud from which an
 * author goes on.
 */
export function blankVehicle({
  id,
  title,
}: {
  readonly id: string;
  readonly title: string;
}): VehicleDocument {
  return {
    format: "probeworthy-vehicle-1",
    id,
    title,
    description: "",
    nominalVolts: 12,
    conditions: [
      {
        kind: "choice",
        name: "key",
        title: "Key",
        options: [
          { value: "off", title: "Off" },
          { value: "on", title: "On" },
        ],
        initial: "off",
      },
    ],
    components: [
      {
        kind: "battery",
        id: "G1",
        title: "Battery",
        capacityAmpereHours: 50,
        internalOhms: 0.006,
        stateOfCharge: 0.9,
      },
      { kind: "passive", id: "XD1", title: "Positive stud", terminals: ["30"] },
    ],
    connectors: [],
    conductors: [
      { id: "W1", from: "G1:+", to: "XD1:30", colour: "RD", squareMillimetres: 16, metres: 0.3 },
      { id: "W2", from: "G1:-", to: "XE1", colour: "BK", squareMillimetres: 16, metres: 0.4 },
      { id: "W3", from: "XE1", to: "XE2", colour: "BK", squareMillimetres: 16, metres: 0.6 },
    ],
    splices: [],
    groundPoints: [
      { id: "XE1", title: "Battery ground" },
      { id: "XE2", title: "Engine ground" },
    ],
    symptoms: [],
    systems: [
      {
        id: "first-system",
        title: "First system",
        components: ["G1", "XD1"],
        howItWorks: [],
        normalSurprises: [],
        cautions: [],
        chart: [],
      },
    ],
  };
}
