import type { ControlModule, Expression } from "@probeworthy/vehicle";
import {
  add,
  and,
  atLeast,
  divide,
  greater,
  heard,
  least,
  less,
  message,
  most,
  multiply,
  not,
  or,
  subtract,
  volts,
} from "../expressions";
import { pulsesPerKmh, wheels } from "./wheel-figures";

type Monitor = NonNullable<ControlModule["monitors"]>[number];

const speedSignals = wheels.map(({ name, plus }) => ({
  name,
  value: divide({ hertz: plus }, pulsesPerKmh),
}));
const all = wheels.map(({ name }) => name);

/** Without the fastest and the slowest wheel: one sensor that says nothing does not spoil the road speed. */
const roadSpeed: Expression = multiply(subtract(subtract(add(...all), most(...all)), least(...all)), 0.5);

const wheelMonitors = wheels.flatMap(({ name, title, code, plus, active }): Monitor[] => {
  const signal = (suffix: string, text: string, causes: string[], fails: Expression): Monitor => ({
    code: `${code}-${suffix}`,
    text: `${title}: ${text}`,
    causes,
    enable: atLeast("supplyVolts", 9),
    fails,
    matureSeconds: 0.5,
    hold: "keyCycle",
    warningLamp: true,
  });
  const silent: Monitor = {
    ...signal(
      "31",
      "no signal while the other wheels turn",
      ["sensor", "toothed ring", "conductors of the sensor"],
      less(name, multiply("roadSpeed", 0.6)),
    ),
    enable: and(atLeast("supplyVolts", 9), greater("roadSpeed", 12)),
  };
  if (!active) return [silent];
  return [
    silent,
    signal(
      "14",
      "short to ground or open",
      ["sensor", "conductor open", "connector of the sensor"],
      less(volts(plus), 0.35),
    ),
    signal(
      "12",
      "short to supply",
      ["signal and supply conductor touching", "sensor shorted"],
      greater(volts(plus), 2.6),
    ),
  ];
});

/** Measures the four wheels and tells the car its road speed. */
export const brakeModule: ControlModule = {
  kind: "module",
  id: "A3",
  title: "Brake module",
  place: "engine bay, left, on the hydraulic unit",
  zone: "engineBayLeft",
  terminals: [
    { name: "15", function: "ignition feed, fuse F14" },
    { name: "31", function: "ground" },
    { name: "CH", function: "CAN high" },
    { name: "CL", function: "CAN low" },
    { name: "VL", function: "wheel speed front left, supply" },
    { name: "SL", function: "wheel speed front left, signal" },
    { name: "VR", function: "wheel speed front right, supply" },
    { name: "SR", function: "wheel speed front right, signal" },
    { name: "RL+", function: "wheel speed rear left" },
    { name: "RL-", function: "wheel speed rear left, return" },
    { name: "RR+", function: "wheel speed rear right" },
    { name: "RR-", function: "wheel speed rear right, return" },
    { name: "54", function: "brake lamp switch" },
  ],
  ground: "31",
  internalGroundOhms: 0.01,
  internalLinks: [{ from: "VL", to: "VR", ohms: 0.5 }],
  supply: { terminal: "15", wakeVolts: 7.5, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.5 },
  rails: [{ name: "sensorFeed", terminal: "VL", volts: 9, limitAmps: 0.06 }],
  inputs: [
    ...["SL", "SR"].map((terminal) => ({
      terminal,
      pull: { to: "ground" as const, ohms: 115 },
      pulseSwingVolts: 0.4,
    })),
    ...["RL", "RR"].flatMap((wheel) => [
      {
        terminal: `${wheel}+`,
        pull: { to: "ground" as const, ohms: 22_000 },
        pulseSwingVolts: 0.12,
        pulseAgainst: `${wheel}-`,
      },
      { terminal: `${wheel}-`, pull: { to: "ground" as const, ohms: 22_000 } },
    ]),
    { terminal: "54", pull: { to: "ground", ohms: 10_000 } },
  ],
  bus: {
    canHigh: "CH",
    canLow: "CL",
    dominantShare: 0.07,
    sends: [
      { message: "roadSpeed", value: "roadSpeed" },
      { message: "brakeLamp", value: "wheelFailed" },
    ],
    receives: [{ message: "engineSpeed", from: "A2", substitute: 0 }],
  },
  signals: [
    { name: "awake", value: 1 },
    { name: "supplyVolts", value: volts("15") },
    { name: "engineSpeed", value: message("engineSpeed") },
    ...speedSignals,
    { name: "roadSpeed", value: roadSpeed },
    { name: "brakePressed", value: atLeast(volts("54"), 6) },
    { name: "wheelFailed", value: or(...wheelMonitors.map(({ code }) => ({ failed: code }))) },
  ],
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
    ...wheelMonitors,
    {
      code: "C0045-16",
      text: "Wheel speed sensor supply: below threshold",
      causes: ["short in a front wheel speed sensor or its conductors"],
      enable: atLeast("supplyVolts", 10),
      fails: less(volts("VL"), 7),
      matureSeconds: 0.5,
      hold: "keyCycle",
      warningLamp: true,
    },
    {
      code: "C0040-64",
      text: "Brake lamp switch: signal not plausible",
      causes: ["brake lamp switch stuck or badly set", "conductor touching a supply"],
      enable: and(greater("roadSpeed", 60), greater("engineSpeed", 1500)),
      fails: "brakePressed",
      matureSeconds: 20,
      hold: "live",
      warningLamp: false,
    },
  ],
  scanValues: [
    { name: "supplyVolts", title: "Supply", unit: "V", decimals: 1, value: "supplyVolts" },
    { name: "roadSpeed", title: "Road speed", unit: "km/h", decimals: 0, value: "roadSpeed" },
    ...wheels.map(({ name, title }) => ({ name, title, unit: "km/h", decimals: 0, value: name })),
    { name: "brakePressed", title: "Brake lamp switch", unit: "", decimals: 0, value: "brakePressed" },
    {
      name: "engineSpeed",
      title: "Engine speed, received",
      unit: "1/min",
      decimals: 0,
      value: "engineSpeed",
    },
  ],
};
