import { buildRig, plug, wire } from "../rig";
import { choice, module, op } from "./parts";

/**
 * Electric power steering: motor feed over F1 (60 A), ignition enable over F2 (5 A), and its ground, with that of a second
 * module, at a frame that a braided strap W9 joins to the battery. An owner's 12 V outlet hangs on F2. The motor stands
 * still, as on a parked car; some 44 A come from the battery. All figures but those named beside the cases are ours.
 */
const steering = module("A1", ["15", "M1", "M2", "L", "T"], {
  supply: { terminal: "15", wakeVolts: 8, dropoutVolts: 6, quiescentAmps: 0, runningAmps: 0.3 },
  inputs: [{ terminal: "T", pull: { to: "ground", ohms: 10_000 } }],
  signals: [{ name: "target", value: { if: op("greater", { volts: "T" }, 6), yes: 70, no: 0 } }],
  outputs: [
    {
      kind: "bridge",
      name: "motor",
      plus: "M1",
      minus: "M2",
      feed: "30",
      return: "31",
      targetAmps: "target",
      bridgeOhms: 0.008,
      minimumFeedVolts: 7,
    },
    { kind: "lowSide", name: "lamp", terminal: "L", on: { failed: "C1555" }, onOhms: 0.2 },
  ],
  monitors: [
    {
      code: "C1555",
      text: "Motor feed low",
      fails: op("less", { volts: "30" }, 10),
      matureSeconds: 0.5,
      hold: "keyCycle",
      warningLamp: true,
    },
  ],
});
const cluster = module("A2", [], {
  supply: { terminal: "30", wakeVolts: 10.5, dropoutVolts: 9.5, quiescentAmps: 0, runningAmps: 0.2 },
});
export const steeringRig = buildRig({
  conditions: [
    choice("wheel", "released", "worked"),
    choice("inflator", "off", "on"),
    choice("key", "on", "off"),
  ],
  components: [
    { kind: "fuse", id: "F1", title: "Steering motor", ratingAmps: 60, form: "E", coldOhms: 0.0009 },
    { kind: "fuse", id: "F2", title: "Steering enable", ratingAmps: 5, form: "F", coldOhms: 0.017 },
    { kind: "fuse", id: "F3", title: "Warning lamp", ratingAmps: 5, form: "F", coldOhms: 0.017 },
    steering,
    cluster,
    { kind: "motor", id: "M1", title: "Assist motor", windingOhmsAt20: 0.1, torquePerAmp: 0.05 },
    { kind: "lamp", id: "E1", title: "Steering warning lamp", ratedVolts: 12, ratedWatts: 2 },
    {
      kind: "switch",
      id: "S1",
      title: "Tyre inflator's switch",
      terminals: ["1", "2"],
      condition: "inflator",
      positions: { off: [], on: [["1", "2"]] },
      contactOhms: 0.01,
    },
    {
      kind: "switch",
      id: "S2",
      title: "In place of a torque sensor",
      terminals: ["1", "2"],
      condition: "wheel",
      positions: { released: [], worked: [["1", "2"]] },
      contactOhms: 0.01,
    },
    { kind: "resistor", id: "R1", title: "Tyre inflator", ohms: 1.6 },
  ],
  connectors: [plug("X1", "A1", ["30", "31", "15", "M1", "M2", "L", "T"]), plug("X2", "A2", ["30", "31"])],
  conductors: [
    wire("W2", "G1:+", "F1:1", 0.3, 16),
    wire("W3", "F1:2", "X1.1", 1, 10),
    wire("W4", "X1.2", "XS1", 0.3, 10),
    wire("W5", "G1:+", "F2:1"),
    wire("W6", "F2:2", "X1.3"),
    wire("W7", "X1.4", "M1:1", 0.2, 6),
    wire("W8", "X1.5", "M1:2", 0.2, 6),
    wire("W9", "XS1", "XE1", 0.2, 25),
    wire("W10", "G1:+", "X2.1", 0.5, 2.5),
    wire("W11", "X2.2", "XS1", 0.5, 2.5),
    wire("W12", "G1:+", "F3:1"),
    wire("W13", "F3:2", "E1:1"),
    wire("W14", "E1:2", "X1.6"),
    wire("W15", "F2:2", "S1:1"),
    wire("W16", "S1:2", "R1:1"),
    wire("W17", "R1:2", "XE1"),
    wire("W18", "F2:2", "S2:1"),
    wire("W19", "S2:2", "X1.7"),
  ],
  splices: ["XS1"],
});
export const worked = { conditions: { wheel: "worked" } };
export const released = { conditions: { wheel: "released" } };
