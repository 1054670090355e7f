import type { Component, Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, number, plug, wire } from "../rig";
import { Bench, near } from "./bench";
import { module, modulePlug, socket } from "./parts";

const position = (id: string): Component => ({
  kind: "positionSensor",
  id,
  title: `Sensor ${id}`,
  position: { condition: "travel" },
  tracks: [
    { supply: "V", ground: "G", signal: "S", atRest: 0.1, atFull: 0.9, trackOhms: 5000, outputOhms: 100 },
  ],
});
/** A sensor with three wires, joined to the supply splice, the ground splice and nothing else. */
const sensorPlug = (id: string, sensor: string) => plug(id, sensor, ["V", "G", "S"]);

describe("a sensor supply held at 0.45 V by a short at a splice", () => {
  // 2carpros.com/questions/stumped-need-help-from-you-chrysler-jeep-people. The supply's limit of 100 mA, from practice,
  // makes 4.5 Ω of it. The supply leaves the module at two plugs, X2 for B1 and B2, X3 for B3 and B4; a second supply is apart.
  const power = plug("X1", "A1", ["30", "31"]);
  const rig = buildRig({
    conditions: [number("travel", 0, 0, 1)],
    components: [
      module("A1", ["V1", "G1", "V2", "G2", "W"], {
        groundLinks: ["G1", "G2"].map((terminal) => ({ terminal, ohms: 0.01 })),
        internalLinks: [{ from: "V1", to: "V2", ohms: 0.01 }],
        rails: [
          { name: "first", terminal: "V1", volts: 5, limitAmps: 0.1 },
          { name: "second", terminal: "W", volts: 5, limitAmps: 0.1 },
        ],
      }),
      ...["B1", "B2", "B3", "B4"].map(position),
    ],
    connectors: [
      power,
      plug("X2", "A1", ["V1", "G1", "W"]),
      plug("X3", "A1", ["V2", "G2"]),
      ...["1", "2", "3", "4"].map((n) => sensorPlug(`X1${n}`, `B${n}`)),
    ],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      wire("W4", "X2.1", "XS1"),
      wire("W5", "X2.2", "XS2"),
      wire("W6", "X3.1", "XS3"),
      wire("W7", "X3.2", "XS4"),
      ...["1", "2"].flatMap((n) => [wire(`W1${n}`, "XS1", `X1${n}.1`), wire(`W2${n}`, "XS2", `X1${n}.2`)]),
      ...["3", "4"].flatMap((n) => [wire(`W1${n}`, "XS3", `X1${n}.1`), wire(`W2${n}`, "XS4", `X1${n}.2`)]),
    ],
    splices: ["XS1", "XS2", "XS3", "XS4"],
  });
  const faults: Fault[] = [{ kind: "shortBetween", at: "XS3", other: "XS4", ohms: 4.5 }];
  const throttle = "X11.1:h";
  it("reads 0.45 V at the throttle sensor and 5 V on the other supply", () => {
    const bench = new Bench(rig, faults);
    near(bench.volts(throttle), 0.45, 0.02);
    near(bench.volts("X2.3:h"), 5, 0.02);
    near(new Bench(rig).volts(throttle), 5, 0.02);
  });
  it("stays there with every sensor unplugged", () => {
    near(new Bench(rig, faults).unplug("X11", "X12", "X13", "X14").volts(throttle), 0.45, 0.02);
  });
  it("is back at 5 V with the module's other plug off, with all the sensors on", () => {
    near(new Bench(rig, faults).unplug("X3").volts(throttle), 5, 0.02);
  });
  it("shows on which side of the module's pin the short is", () => {
    const bench = new Bench(rig, faults).unplug("X3");
    near(bench.volts("X3.1:c"), 5, 0.02); // the module's face
    near(bench.ohms("X3.1:h", "X3.2:h"), 4.7, 0.1); // the harness, leads 0.16 Ω included
  });
});

describe("a shorted crankshaft sensor takes the engine module off the network", () => {
  // hubpages.com/autos/jeep-no-start. The module's processor lives on the 5 V its sensors share: two parts here, the
  // supply part A1 and the processor part A2, which needs 4.5 V.
  const supply = module("A1", ["V"], {
    rails: [{ name: "five", terminal: "V", volts: 5, limitAmps: 0.25 }],
  });
  const processor = module("A2", ["H", "L"], {
    supply: { terminal: "30", wakeVolts: 4.5, dropoutVolts: 4, quiescentAmps: 0.001, runningAmps: 0.08 },
    bus: {
      canHigh: "H",
      canLow: "L",
      terminationOhms: 60,
      dominantShare: 0.1,
      sends: [],
      receives: [],
    },
  });
  const rig = buildRig({
    conditions: [number("travel", 0, 0, 1)],
    components: [supply, processor, socket, ...["B1", "B2", "B3"].map(position)],
    connectors: [
      modulePlug("X1", supply),
      modulePlug("X2", processor),
      ...["1", "2", "3"].map((n) => sensorPlug(`X1${n}`, `B${n}`)),
    ],
    conductors: [
      wire("W2", "G1:+", "X1.1"),
      wire("W3", "X1.2", "XE1"),
      wire("W4", "X1.3", "XS1"),
      wire("W5", "XS1", "X2.1"),
      wire("W6", "X2.2", "XE1"),
      wire("W7", "X2.3", "X9:6"),
      wire("W8", "X2.4", "X9:14"),
      wire("W9", "G1:+", "X9:16"),
      wire("W10", "X9:4", "XE1"),
      ...["1", "2", "3"].flatMap((n) => [
        wire(`W1${n}`, "XS1", `X1${n}.1`),
        wire(`W2${n}`, `X1${n}.2`, "XE1"),
      ]),
    ],
    splices: ["XS1"],
  });
  const faults: Fault[] = [{ kind: "internalShort", component: "B1", terminal: "V", other: "G", ohms: 1 }];
  it("is silent though its feed and its grounds are good", () => {
    const bench = new Bench(rig, faults);
    expect(bench.codes("A2")).toBeUndefined();
    expect(bench.volts("X1.1:h", "X1.2:h")).toBeGreaterThan(12.5);
    near(bench.volts("XS1"), 0.25, 0.02);
  });
  it("does not care for the other two sensors, and links the moment the shorted one is unplugged", () => {
    const bench = new Bench(rig, faults).unplug("X12", "X13");
    expect(bench.codes("A2")).toBeUndefined();
    expect(bench.unplug("X11").codes("A2")).toEqual([]);
    expect(bench.do({ plug: "X11" }).codes("A2")).toBeUndefined();
    expect(new Bench(rig).codes("A2")).toEqual([]);
  });
});
