import type { ControlModule, Expression } from "@probeworthy/vehicle";
import { and, atLeast, choose, greater, less, not, or, volts } from "../expressions";

/** A lead that a switch joins to ground: pulled up inside, so "on" is low. */
const closedToGround = (terminal: string): Expression => less(volts(terminal), 3);

/** Below this an indicator side has lost a 21 W bulb: two of them with a 5 W repeater draw nearly 4 A. */
const leastIndicatorAmps = 3;
const leastBrakeLeakVolts = 4;

const indicatorMonitors = (
  side: string,
  code: string,
  commanded: string,
  output: string,
  terminal: string,
): NonNullable<ControlModule["monitors"]> => [
  {
    code: `${code}-18`,
    text: `Indicators ${side}: current below threshold`,
    causes: ["bulb", "bulb holder or its ground", "conductor to one lamp open"],
    enable: and(commanded, atLeast("feedVolts", 10), atLeast(volts(terminal), 9)),
    fails: less({ amps: output }, leastIndicatorAmps),
    matureSeconds: 0.6,
    hold: "live",
    warningLamp: false,
  },
  {
    code: `${code}-11`,
    text: `Indicators ${side}: short to ground`,
    causes: ["conductor chafed", "water in a lamp connector"],
    enable: and(commanded, atLeast("feedVolts", 10)),
    fails: or(greater({ amps: output }, 14), less(volts(terminal), 6)),
    matureSeconds: 0.3,
    hold: "keyCycle",
    warningLamp: false,
  },
];

/**
 * Lights the indicators through high sides, works the horn relay, watches doors, lamps and its feeds. The bus passes
 * through it: terminals CH and CL come in, CH2 and CL2 go on. It flashes; everything here is its lit half.
 */
export const bodyModule: ControlModule = {
  kind: "module",
  id: "A5",
  title: "Body module",
  place: "behind the dash fuse box",
  zone: "dashLeft",
  terminals: [
    { name: "30", function: "memory feed, fuse F36" },
    { name: "30L", function: "indicator feed, fuse F37" },
    { name: "15", function: "ignition feed, fuse F47" },
    { name: "31", function: "ground" },
    { name: "CH", function: "CAN high, in" },
    { name: "CL", function: "CAN low, in" },
    { name: "CH2", function: "CAN high, out to the cluster" },
    { name: "CL2", function: "CAN low, out to the cluster" },
    { name: "LIN", function: "LIN master" },
    { name: "IL", function: "indicators left" },
    { name: "IR", function: "indicators right" },
    { name: "SL", function: "indicator switch left, to ground" },
    { name: "SR", function: "indicator switch right, to ground" },
    { name: "SH", function: "hazard switch, to ground" },
    { name: "HB", function: "horn button, to ground" },
    { name: "HR", function: "horn relay coil, switched to ground" },
    { name: "DC", function: "door contact, to ground with the door open" },
    { name: "58", function: "side lamps, read back" },
    { name: "54", function: "brake lamps, read back" },
  ],
  ground: "31",
  internalGroundOhms: 0.008,
  internalLinks: [
    { from: "CH", to: "CH2", ohms: 0.05 },
    { from: "CL", to: "CL2", ohms: 0.05 },
  ],
  supply: {
    terminal: "30",
    wakeVolts: 7,
    dropoutVolts: 5.5,
    quiescentAmps: 0,
    runningAmps: 0.22,
    sleep: { afterSeconds: 180, asleepAmps: 0.006, stayAwake: "busy" },
  },
  inputs: [
    ...["SL", "SR", "SH", "HB", "DC"].map((terminal) => ({
      terminal,
      pull: { to: "supply" as const, ohms: 2200 },
    })),
    ...["15", "58", "54"].map((terminal) => ({ terminal, pull: { to: "ground" as const, ohms: 22_000 } })),
  ],
  bus: {
    canHigh: "CH",
    canLow: "CL",
    dominantShare: 0.03,
    sends: [
      { message: "sideLamps", value: "sideLamps" },
      { message: "doorOpen", value: "doorOpen" },
      { message: "indicatorFast", value: "indicatorFast" },
    ],
    receives: [],
  },
  lin: { terminal: "LIN", role: "master", dominantShare: 0.12, sends: [], receives: [] },
  signals: [
    { name: "awake", value: 1 },
    { name: "supplyVolts", value: volts("30") },
    { name: "feedVolts", value: volts("30L") },
    { name: "ignition", value: atLeast(volts("15"), 6) },
    { name: "hazard", value: closedToGround("SH") },
    { name: "left", value: or("hazard", and("ignition", closedToGround("SL"))) },
    { name: "right", value: or("hazard", and("ignition", closedToGround("SR"))) },
    { name: "hornOn", value: closedToGround("HB") },
    { name: "doorOpen", value: closedToGround("DC") },
    { name: "sideLamps", value: atLeast(volts("58"), 6) },
    { name: "brake", value: atLeast(volts("54"), 6) },
    {
      name: "busy",
      value: or("ignition", "hazard", "hornOn", "doorOpen", "sideLamps", "brake"),
    },
    { name: "shorted", value: or({ failed: "B1501-11" }, { failed: "B1502-11" }) },
    { name: "leftOn", value: and("left", not({ failed: "B1501-11" })) },
    { name: "rightOn", value: and("right", not({ failed: "B1502-11" })) },
    {
      name: "indicatorFast",
      value: or(and("left", { failed: "B1501-18" }), and("right", { failed: "B1502-18" })),
    },
  ],
  outputs: [
    { kind: "highSide", name: "leftLamps", terminal: "IL", on: "leftOn", onOhms: 0.02, through: "30L" },
    { kind: "highSide", name: "rightLamps", terminal: "IR", on: "rightOn", onOhms: 0.02, through: "30L" },
    { kind: "lowSide", name: "hornRelay", terminal: "HR", on: "hornOn", onOhms: 0.8 },
  ],
  monitors: [
    ...indicatorMonitors("left", "B1501", "leftOn", "leftLamps", "IL"),
    ...indicatorMonitors("right", "B1502", "rightOn", "rightLamps", "IR"),
    {
      code: "B1503-16",
      text: "Indicator feed: voltage below threshold",
      causes: ["fuse F37", "feed conductor"],
      enable: and("ignition", atLeast("supplyVolts", 10)),
      fails: less("feedVolts", 8),
      matureSeconds: 1,
      hold: "live",
      warningLamp: false,
    },
    {
      code: "B1504-14",
      text: "Ignition feed: short to ground or open",
      causes: ["fuse F47", "feed conductor"],
      enable: and("brake", atLeast("supplyVolts", 13)),
      fails: not("ignition"),
      matureSeconds: 2,
      hold: "live",
      warningLamp: false,
    },
    {
      code: "B1505-12",
      text: "Brake lamp signal: present without ignition for long",
      causes: ["brake lamp switch stuck or badly set", "brake lamp conductor touching a supply"],
      enable: and(not("ignition"), not("doorOpen")),
      fails: atLeast(volts("54"), leastBrakeLeakVolts),
      matureSeconds: 60,
      hold: "live",
      warningLamp: false,
    },
    {
      code: "B1506-16",
      text: "Memory feed: voltage below threshold",
      causes: ["weak battery", "charging", "resistance in the feed"],
      enable: "ignition",
      fails: less("supplyVolts", 10.5),
      matureSeconds: 5,
      hold: "live",
      warningLamp: false,
    },
  ],
  scanValues: [
    { name: "supplyVolts", title: "Memory feed", unit: "V", decimals: 1, value: "supplyVolts" },
    { name: "feedVolts", title: "Indicator feed", unit: "V", decimals: 1, value: "feedVolts" },
    { name: "leftAmps", title: "Indicators left", unit: "A", decimals: 1, value: { amps: "leftLamps" } },
    { name: "rightAmps", title: "Indicators right", unit: "A", decimals: 1, value: { amps: "rightLamps" } },
    { name: "ignition", title: "Ignition", unit: "", decimals: 0, value: "ignition" },
    { name: "brake", title: "Brake lamp signal", unit: "", decimals: 0, value: "brake" },
    { name: "sideLamps", title: "Side lamps on", unit: "", decimals: 0, value: "sideLamps" },
    { name: "hornButton", title: "Horn button", unit: "", decimals: 0, value: "hornOn" },
    { name: "door", title: "Driver's door open", unit: "", decimals: 0, value: choose("doorOpen", 1, 0) },
  ],
};
