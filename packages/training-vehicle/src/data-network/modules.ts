import type { ControlModule } from "@probeworthy/vehicle";
import { atLeast, condition, heard, message, not, volts } from "../expressions";

const awake = { name: "awake", value: 1 };
const supplyVolts = { name: "supplyVolts", value: volts("15") };
const supplyScan = { name: "supplyVolts", title: "Supply", unit: "V", decimals: 1, value: "supplyVolts" };
const supply = { terminal: "15", wakeVolts: 7.5, dropoutVolts: 6 };

/** Sends the engine speed and ends the CAN at one end. Its own sensors are not part of this vehicle's wiring yet. */
export const engineModule: ControlModule = {
  kind: "module",
  id: "A2",
  title: "Engine module",
  place: "engine bay, right",
  terminals: [
    { name: "15", function: "ignition feed, fuse F12" },
    { name: "31", function: "ground" },
    { name: "CH", function: "CAN high, terminator inside" },
    { name: "CL", function: "CAN low, terminator inside" },
    { name: "50", function: "start request from the ignition switch" },
  ],
  ground: "31",
  internalGroundOhms: 0.01,
  supply: { ...supply, quiescentAmps: 0, runningAmps: 1.4 },
  inputs: [{ terminal: "50", pull: { to: "ground", ohms: 4700 } }],
  bus: {
    canHigh: "CH",
    canLow: "CL",
    terminationOhms: 120,
    dominantShare: 0.09,
    sends: [{ message: "engineSpeed", value: condition("engineSpeed") }],
    receives: [{ message: "roadSpeed", from: "A3", substitute: 0 }],
  },
  signals: [awake, supplyVolts, { name: "startRequest", value: atLeast(volts("50"), 6) }],
  monitors: [
    {
      code: "U0129-87",
      text: "No message from the brake module",
      causes: ["CAN wiring", "brake module without supply or ground"],
      enable: atLeast("supplyVolts", 9),
      fails: not(heard("roadSpeed")),
      matureSeconds: 1,
      hold: "live",
      warningLamp: false,
    },
  ],
  scanValues: [
    supplyScan,
    {
      name: "engineSpeed",
      title: "Engine speed",
      unit: "1/min",
      decimals: 0,
      value: condition("engineSpeed"),
    },
    {
      name: "roadSpeed",
      title: "Road speed, received",
      unit: "km/h",
      decimals: 0,
      value: message("roadSpeed"),
    },
    { name: "startRequest", title: "Start request", unit: "", decimals: 0, value: "startRequest" },
  ],
};

export const brakeModule: ControlModule = {
  kind: "module",
  id: "A3",
  title: "Brake module",
  place: "engine bay, left, on the hydraulic unit",
  terminals: [
    { name: "15", function: "ignition feed, fuse F14" },
    { name: "31", function: "ground" },
    { name: "CH", function: "CAN high" },
    { name: "CL", function: "CAN low" },
  ],
  ground: "31",
  internalGroundOhms: 0.01,
  supply: { ...supply, quiescentAmps: 0, runningAmps: 0.5 },
  bus: {
    canHigh: "CH",
    canLow: "CL",
    dominantShare: 0.07,
    sends: [{ message: "roadSpeed", value: condition("roadSpeed") }],
    receives: [{ message: "engineSpeed", from: "A2", substitute: 0 }],
  },
  signals: [awake, supplyVolts, { name: "engineSpeed", value: message("engineSpeed") }],
  monitors: [
    {
      code: "U0100-87",
      text: "No message from the engine module",
      causes: ["CAN wiring", "engine module without supply or ground"],
      enable: atLeast("supplyVolts", 9),
      fails: not(heard("engineSpeed")),
      matureSeconds: 1,
      hold: "live",
      warningLamp: false,
    },
  ],
  scanValues: [
    supplyScan,
    { name: "roadSpeed", title: "Road speed", unit: "km/h", decimals: 0, value: condition("roadSpeed") },
    {
      name: "engineSpeed",
      title: "Engine speed, received",
      unit: "1/min",
      decimals: 0,
      value: "engineSpeed",
    },
  ],
};
