import type { ControlModule, VehicleDocument } from "@probeworthy/vehicle";
import { atLeast, condition, divide, greater, lookUp, most, volts } from "../expressions";
import { cavities, type HarnessPart, wire } from "../harness";

const heaterBox = { place: "heater box, behind the glove box", zone: "dashRight" } as const;
const dashFuses = { place: "fuse box, left end of the dash", zone: "dashLeft" } as const;

/** A transistor in the motor's ground lead that keeps part of the voltage for itself, and warms up with it. */
const controller: ControlModule = {
  kind: "module",
  id: "A8",
  title: "Blower controller",
  ...heaterBox,
  terminals: [
    { name: "+", function: "feed from the blower relay" },
    { name: "31", function: "ground" },
    { name: "M-", function: "blower motor, minus" },
    { name: "5V", function: "blower control, 5 V" },
    { name: "S", function: "blower control, signal" },
    { name: "SG", function: "blower control, ground" },
  ],
  ground: "31",
  internalGroundOhms: 0.003,
  groundLinks: [{ terminal: "SG", ohms: 0.02 }],
  supply: { terminal: "+", wakeVolts: 7, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.02 },
  rails: [{ name: "rail", terminal: "5V", volts: 5, limitAmps: 0.03 }],
  inputs: [{ terminal: "S", pull: { to: "ground", ohms: 100_000 } }],
  signals: [
    { name: "awake", value: 1 },
    { name: "supplyVolts", value: volts("+") },
    { name: "share", value: divide(volts("S"), most(1, volts("5V"))) },
    {
      name: "target",
      value: {
        if: atLeast("share", 0.2),
        yes: lookUp("share", [
          [0.3, 4.5],
          [0.5, 7],
          [0.7, 9.5],
          [0.88, 16],
        ]),
        no: 0,
      },
    },
    { name: "running", value: greater("target", 1) },
  ],
  outputs: [{ kind: "linear", name: "blower", terminal: "M-", feed: "+", loadVolts: "target", onOhms: 0.01 }],
};

const parts: VehicleDocument["components"] = [
  controller,
  {
    kind: "motor",
    id: "M14",
    title: "Blower motor",
    ...heaterBox,
    windingOhmsAt20: 0.12,
    torquePerAmp: 0.035,
    turning: { frictionTorque: 0.05, loadPerSpeedSquared: 7.1e-6 },
  },
  {
    kind: "positionSensor",
    id: "B30",
    title: "Blower control",
    place: "centre of the dash",
    zone: "dashCentre",
    position: divide(condition("blowerStage"), 4),
    tracks: [
      { supply: "5V", signal: "S", ground: "31", atRest: 0.1, atFull: 0.9, trackOhms: 5000, outputOhms: 200 },
    ],
  },
  {
    kind: "relay",
    id: "K13",
    title: "Blower relay",
    ...dashFuses,
    contact: "make",
    coilOhms: 85,
    pullInVolts: 7,
    dropOutVolts: 2.5,
    contactOhms: 0.004,
    suppressor: "diode",
  },
  {
    kind: "fuse",
    id: "F28",
    title: "Blower relay coil",
    ...dashFuses,
    ratingAmps: 5,
    form: "F",
    coldOhms: 0.0168,
  },
  { kind: "fuse", id: "F29", title: "Blower", ...dashFuses, ratingAmps: 30, form: "C", coldOhms: 0.0022 },
];

/** Blower motor with its controller, the control on the dash and the relay that feeds it with the ignition. */
export const blower: HarnessPart = {
  components: parts,
  connectors: [
    {
      id: "X240",
      title: "Blower controller",
      ...heaterBox,
      housing: "black, six-way",
      rows: 1,
      columns: 6,
      component: "A8",
      cavities: cavities(["+", "M-", "31", "5V", "S", "SG"]),
    },
    {
      id: "X241",
      title: "Blower motor",
      ...heaterBox,
      housing: "natural, two-way",
      rows: 1,
      columns: 2,
      component: "M14",
      cavities: cavities(["1", "2"]),
    },
    {
      id: "X242",
      title: "Blower control",
      place: "centre of the dash",
      zone: "dashCentre",
      housing: "blue, three-way",
      rows: 1,
      columns: 3,
      component: "B30",
      cavities: cavities(["5V", "S", "31"]),
    },
  ],
  splices: [{ id: "XS44", title: "Blower feed splice", ...heaterBox }],
  groundPoints: [{ id: "XE13", title: "Heater box ground", place: "right front pillar", zone: "dashRight" }],
  conductors: [
    wire("W400", "XS6", "F28:1", "VT", 2.5, 0.03),
    wire("W401", "F28:2", "K13:86", "VTBK", 0.5, 0.1),
    wire("W402", "K13:85", "XS3", "BKWH", 0.5, 0.4),
    wire("W403", "XS5", "F29:1", "RD", 16, 0.04),
    wire("W404", "F29:2", "K13:30", "RDGY", 4, 0.1),
    wire("W405", "K13:87", "XS44", "RDYE", 4, 1.3),
    wire("W406", "XS44", "X241.1", "RDYE", 4, 0.2),
    wire("W407", "XS44", "X240.1", "RDYE", 4, 0.2),
    wire("W408", "X241.2", "X240.2", "BNRD", 4, 0.3),
    wire("W409", "X240.3", "XE13", "BK", 4, 0.4),
    wire("W410", "X240.4", "X242.1", "RDWH", 0.35, 0.8),
    wire("W411", "X240.5", "X242.2", "WHVT", 0.35, 0.8),
    wire("W412", "X240.6", "X242.3", "BNVT", 0.35, 0.8),
  ],
};
