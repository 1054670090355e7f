import type { ComponentOf, ControlModule, VehicleDocument } from "@probeworthy/vehicle";
import {
  and,
  atLeast,
  atMost,
  divide,
  greater,
  less,
  lookUp,
  most,
  multiply,
  or,
  volts,
} from "../expressions";

const engineBayBox = { place: "fuse box in the engine bay, left", zone: "engineBayLeft" } as const;
const radiator = { place: "behind the radiator", zone: "engineBayFront" } as const;

const relay = (id: string, title: string, coilOhms: number): ComponentOf<"relay"> => ({
  kind: "relay",
  id,
  title,
  ...engineBayBox,
  contact: "make",
  coilOhms,
  pullInVolts: 7,
  dropOutVolts: 2.5,
  contactOhms: 0.005,
  suppressor: "resistor",
});

/** Share of the supply that stands on the request lead on average: what the module has asked for. */
const requestShare = divide(volts("RQ"), most(1, "supplyVolts"));

/** Drives the main fan with pulses. No believable request means full speed: better noisy than boiled. */
const fanModule: ControlModule = {
  kind: "module",
  id: "A6",
  title: "Radiator fan module",
  ...radiator,
  terminals: [
    { name: "30", function: "battery feed, fuse F21" },
    { name: "15", function: "ignition feed, fuse F26" },
    { name: "31", function: "ground" },
    { name: "RQ", function: "request from the engine module" },
    { name: "RG", function: "request, ground" },
    { name: "M+", function: "fan motor, plus" },
    { name: "M-", function: "fan motor, minus" },
  ],
  ground: "31",
  internalGroundOhms: 0.002,
  groundLinks: [{ terminal: "RG", ohms: 2.2 }],
  supply: { terminal: "15", wakeVolts: 7, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.03 },
  inputs: [{ terminal: "RQ", pull: { to: "ground", ohms: 10_000 } }],
  signals: [
    { name: "awake", value: 1 },
    { name: "supplyVolts", value: volts("15") },
    { name: "request", value: requestShare },
    { name: "noRequest", value: or(less("request", 0.05), greater("request", 0.97)) },
    {
      name: "duty",
      value: {
        if: "noRequest",
        yes: 0.95,
        no: {
          if: atMost("request", 0.18),
          yes: 0,
          no: lookUp("request", [
            [0.2, 0.3],
            [0.88, 1],
          ]),
        },
      },
    },
    { name: "run", value: and(atLeast(volts("30"), 7), multiply("duty", 1)) },
  ],
  outputs: [
    {
      kind: "chopper",
      name: "fan",
      plus: "M+",
      minus: "M-",
      feed: "30",
      return: "31",
      duty: "duty",
      hertz: 20_000,
      onOhms: 0.006,
    },
  ],
};

const fan = (
  id: string,
  title: string,
  windingOhmsAt20: number,
  loadPerSpeedSquared: number,
): ComponentOf<"motor"> => ({
  kind: "motor",
  id,
  title,
  ...radiator,
  windingOhmsAt20,
  torquePerAmp: 0.04,
  turning: { frictionTorque: 0.05, loadPerSpeedSquared },
});

/** Main fan on its module; auxiliary fan through a relay and a series resistor. */
export const fanParts: VehicleDocument["components"] = [
  fanModule,
  fan("M10", "Radiator fan 300 W", 0.08, 1.24e-5),
  fan("M11", "Auxiliary fan 120 W", 0.2, 5.6e-6),
  relay("K10", "Auxiliary fan relay", 82),
  {
    kind: "resistor",
    id: "R5",
    title: "Series resistor of the auxiliary fan",
    ...radiator,
    ohms: 0.3,
  },
];

/** Pump with its relay; a second relay bridges the series resistor when the engine needs all the fuel. */
export const pumpParts: VehicleDocument["components"] = [
  relay("K11", "Fuel pump relay", 85),
  relay("K12", "Fuel pump full level relay", 85),
  { kind: "resistor", id: "R6", title: "Series resistor of the fuel pump", ...engineBayBox, ohms: 2.2 },
  {
    kind: "motor",
    id: "M13",
    title: "Fuel pump",
    place: "in the tank, under the rear seat",
    zone: "rearSeat",
    windingOhmsAt20: 0.5,
    torquePerAmp: 0.02,
    turning: { frictionTorque: 0.02, loadPerSpeedSquared: 2.6e-7 },
  },
];
