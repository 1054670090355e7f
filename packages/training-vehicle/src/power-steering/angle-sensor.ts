import type { ControlModule } from "@probeworthy/vehicle";
import { condition, volts } from "../expressions";
import { cavities, type HarnessPart, wire } from "../harness";

/** Tells the angle of the steering wheel over the bus; it has no wire of its own for it. */
const angleSensor: ControlModule = {
  kind: "module",
  id: "A10",
  title: "Steering angle sensor",
  place: "on the steering column, below the wheel",
  zone: "column",
  terminals: [
    { name: "15", function: "ignition feed, fuse F47" },
    { name: "31", function: "ground" },
    { name: "CH", function: "CAN high" },
    { name: "CL", function: "CAN low" },
  ],
  ground: "31",
  internalGroundOhms: 0.02,
  supply: { terminal: "15", wakeVolts: 7.5, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.08 },
  bus: {
    canHigh: "CH",
    canLow: "CL",
    dominantShare: 0.03,
    sends: [{ message: "steeringAngle", value: condition("steeringAngle") }],
    receives: [],
  },
  signals: [{ name: "awake", value: 1 }],
  scanValues: [
    { name: "supplyVolts", title: "Supply", unit: "V", decimals: 1, value: volts("15") },
    {
      name: "steeringAngle",
      title: "Steering angle",
      unit: "°",
      decimals: 0,
      value: condition("steeringAngle"),
    },
  ],
};

export const steeringAngleSensor: HarnessPart = {
  components: [angleSensor],
  connectors: [
    {
      id: "X160",
      title: "Steering angle sensor",
      place: "on the steering column, below the wheel",
      zone: "column",
      housing: "black, four-way",
      rows: 1,
      columns: 4,
      component: "A10",
      cavities: cavities(["15", "31", "CH", "CL"]),
    },
  ],
  conductors: [
    wire("W144", "F47:2", "X160.1", "VTGY", 0.5, 0.8),
    wire("W145", "X160.2", "XS20", "BKWH", 0.5, 0.3),
  ],
};
