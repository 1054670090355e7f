import type { ComponentOf, ControlModule } from "@probeworthy/vehicle";
import { and, atLeast, choose, heard, less, message, not, or, volts } from "../expressions";

const awake = { name: "awake", value: 1 };
const supplyVolts = { name: "supplyVolts", value: volts("15") };
const supplyScan = { name: "supplyVolts", title: "Supply", unit: "V", decimals: 1, value: "supplyVolts" };
const supply = { terminal: "15", wakeVolts: 7.5, dropoutVolts: 6 };

/** Drives the steering warning lamp: lamp check until the engine runs, then on request or when the steering is silent. */
export const instrumentCluster: ControlModule = {
  kind: "module",
  id: "A4",
  title: "Instrument cluster",
  place: "dash, in front of the driver",
  terminals: [
    { name: "15", function: "ignition feed, fuse F13" },
    { name: "31", function: "ground" },
    { name: "CH", function: "CAN high, terminator inside" },
    { name: "CL", function: "CAN low, terminator inside" },
    { name: "LS", function: "steering warning lamp, switched to ground" },
  ],
  ground: "31",
  internalGroundOhms: 0.01,
  supply: { ...supply, quiescentAmps: 0, runningAmps: 0.4 },
  inputs: [{ terminal: "LS", pull: { to: "ground", ohms: 47_000 } }],
  bus: {
    canHigh: "CH",
    canLow: "CL",
    terminationOhms: 120,
    dominantShare: 0.04,
    sends: [],
    receives: [
      { message: "steeringLamp", from: "A1", substitute: 1 },
      { message: "engineSpeed", from: "A2", substitute: 900 },
      { message: "roadSpeed", from: "A3", substitute: 0 },
      { message: "sideLamps", from: "A5", substitute: 0 },
      { message: "doorOpen", from: "A5", substitute: 0 },
    ],
  },
  signals: [
    awake,
    supplyVolts,
    { name: "engineSpeed", value: message("engineSpeed") },
    { name: "lampCheck", value: less("engineSpeed", 500) },
    { name: "lampOn", value: or("lampCheck", message("steeringLamp"), not(heard("steeringLamp"))) },
    { name: "lampVolts", value: volts("LS") },
  ],
  outputs: [{ kind: "lowSide", name: "lamp", terminal: "LS", on: "lampOn", onOhms: 0.6 }],
  monitors: [
    {
      code: "B1417-13",
      text: "Steering warning lamp circuit: open",
      causes: ["warning lamp", "wire between lamp and cluster", "lamp feed"],
      enable: and(not("lampOn"), atLeast("supplyVolts", 9)),
      fails: less("lampVolts", 2),
      matureSeconds: 1,
      hold: "live",
      warningLamp: false,
    },
    {
      code: "U0131-87",
      text: "No message from the power steering module",
      causes: ["power steering module without ignition feed or signal ground", "CAN wiring"],
      enable: atLeast("supplyVolts", 9),
      fails: not(heard("steeringLamp")),
      matureSeconds: 1,
      hold: "live",
      warningLamp: true,
    },
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
    {
      code: "U0140-87",
      text: "No message from the body module",
      causes: ["body module without memory feed or ground", "CAN wiring on either side of the body module"],
      enable: atLeast("supplyVolts", 9),
      fails: not(heard("sideLamps")),
      matureSeconds: 1,
      hold: "live",
      warningLamp: false,
    },
    {
      code: "U3003-16",
      text: "Vehicle voltage with the engine running: below threshold",
      causes: ["alternator or its belt", "charging cable, fuse F3", "regulator"],
      enable: and(heard("engineSpeed"), atLeast("engineSpeed", 700)),
      fails: less("supplyVolts", 12.7),
      matureSeconds: 5,
      hold: "live",
      warningLamp: false,
    },
    {
      code: "U3003-17",
      text: "Vehicle voltage: above threshold",
      causes: ["regulator", "sense wire of the alternator", "jump start with 24 V"],
      fails: atLeast("supplyVolts", 15.4),
      matureSeconds: 5,
      hold: "live",
      warningLamp: false,
    },
  ],
  scanValues: [
    supplyScan,
    { name: "doorOpen", title: "Door open, received", unit: "", decimals: 0, value: message("doorOpen") },
    { name: "sideLamps", title: "Side lamps, received", unit: "", decimals: 0, value: message("sideLamps") },
    {
      name: "engineSpeed",
      title: "Engine speed, received",
      unit: "1/min",
      decimals: 0,
      value: "engineSpeed",
    },
    {
      name: "lampOn",
      title: "Steering warning lamp commanded",
      unit: "",
      decimals: 0,
      value: choose("lampOn", 1, 0),
    },
  ],
};

export const steeringLamp: ComponentOf<"lamp"> = {
  kind: "lamp",
  id: "E1",
  title: "Steering warning lamp",
  place: "tell-tale strip above the column",
  ratedVolts: 13.5,
  ratedWatts: 1.2,
};
