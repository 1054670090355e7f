import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Fault } from "../document/fault";
import { createVehicleIndex, endToPoint } from "../document/vehicle-index";
import { testPoints } from "../points/test-points";
import { benchVehicle } from "../testing/bench-vehicle";
import { Drive, idling, keyOn, must, turning } from "../testing/drive";
import { settle } from "./settle";
import { changeState } from "./state";

const index = createVehicleIndex(benchVehicle);

/** Every voltage and current a test can ask for, as one comparable list. */
function readings(drive: Drive): [string, number][] {
  const settled = drive.now;
  const points = testPoints(drive.vehicle, drive.state).map(({ id }): [string, number] => [
    id,
    settled.volts(id),
  ]);
  const amps = benchVehicle.conductors.map(({ id }): [string, number] => [id, settled.amps(id)]);
  return [...points, ...amps];
}

const situations = {
  keyOff: {},
  keyOn,
  idling,
  turning: turning(7),
  left: turning(-4),
  cranking: { key: "start" },
};

describe.each(Object.entries(situations))("laws: %s", (_, conditions) => {
  it("obeys Kirchhoff's current law at every splice, ring and in-line cavity", () => {
    const { now } = new Drive([], conditions);
    const sums = new Map<string, number>();
    const add = (node: string, amps: number) => sums.set(node, (sums.get(node) ?? 0) + amps);
    for (const { id, from, to } of benchVehicle.conductors) {
      const node = (end: string) => endToPoint(end, index.groundPoints).replace(/^(X7\.\d):[hb]$/, "$1");
      add(node(from), -now.amps(id));
      add(node(to), now.amps(id));
    }
    const passing = [...sums].filter(([node]) => /^XS\d$|^X7\.\d$/.test(node));
    expect(passing.length).toBe(7);
    for (const [node, sum] of passing) expect(Math.abs(sum), node).toBeLessThan(1e-9);
  });

  it("loses no current in a component: what goes into a module, sensor or motor comes out", () => {
    const { now } = new Drive([], conditions);
    for (const owner of ["A1", "A2", "B1", "M1"]) {
      const entering = benchVehicle.conductors.reduce((sum, { id, from, to }) => {
        const owns = (end: string) => index.connectors.get(end.split(".")[0] ?? "")?.component === owner;
        return sum + (owns(to) ? now.amps(id) : 0) - (owns(from) ? now.amps(id) : 0);
      }, 0);
      expect(Math.abs(entering), owner).toBeLessThan(1e-8);
    }
  });

  it("reads the same with faults that change nothing", () => {
    const nothing: Fault[] = [
      { kind: "sensorOffset", component: "B1", channel: "T1", volts: 0 },
      { kind: "motorHot", component: "M1", celsius: 20 },
      { kind: "weakBattery", component: "G1", stateOfCharge: 0.95, internalOhmsFactor: 1 },
      { kind: "shortBetween", at: "X3.1:h", other: "X3.1:h", ohms: 1 },
    ];
    expect(readings(new Drive(nothing, conditions))).toEqual(readings(new Drive([], conditions)));
  });

  it("is settled once settled", () => {
    const drive = new Drive([], conditions);
    const once = drive.now;
    const twice = must(settle(drive.vehicle, once.state));
    expect(twice.state).toEqual(once.state);
    for (const { id } of testPoints(drive.vehicle, drive.state)) expect(twice.volts(id)).toBe(once.volts(id));
  });

  it("gives finite figures only", () => {
    for (const [id, value] of readings(new Drive([], conditions)))
      expect(Number.isFinite(value), id).toBe(true);
  });
});

describe("laws of time and order", () => {
  it("replays to the same state, bit for bit", () => {
    const run = () => {
      const drive = new Drive([{ kind: "seriesResistance", at: "XE2", ohms: 0.05 }], keyOn);
      return drive
        .do({ conditions: turning(8) })
        .wait(40)
        .do({ unplug: "X3" })
        .wait(5)
        .do({ plug: "X3" }).state;
    };
    expect(run()).toEqual(run());
  });

  it("answers from the state alone, whatever was asked before", () => {
    const asked = new Drive([], turning(5));
    const before = readings(asked);
    must(
      settle(asked.vehicle, asked.state, [{ kind: "resistor", id: "load", a: "F2:2", b: "body", ohms: 0.2 }]),
    );
    must(changeState(asked.vehicle, asked.state, { unplug: "X1" }));
    must(changeState(asked.vehicle, asked.state, { conditions: { key: "off" } }));
    // Vehicles of one document share their circuit; what another one was asked must leave no trace either.
    for (const faults of [
      [{ kind: "open", at: "W13" }],
      [{ kind: "shortToGround", at: "X2.4:h", ohms: 1 }],
    ] as const)
      readings(new Drive(faults, turning(-9)));
    expect(readings(asked)).toEqual(before);
  });

  it("survives storage as JSON", () => {
    const drive = new Drive([], turning(8)).wait(30);
    const stored = JSON.parse(JSON.stringify(drive.state));
    expect(stored).toEqual(drive.state);
    expect(must(settle(drive.vehicle, stored)).amps("M1")).toBe(drive.amps("M1"));
  });

  it("moves nothing in no time", () => {
    const drive = new Drive([], turning(8));
    const before = drive.state;
    expect(drive.wait(0).state).toEqual(before);
  });

  it("stays finite and settled with random faults and conditions", () => {
    const place = fc.constantFrom(...benchVehicle.conductors.map(({ id }) => id));
    const point = fc.constantFrom("X2.1:h", "X2.4:h", "X1.1:h", "X1.3:h", "X9:6", "X9:14", "X3.1:h", "XS2");
    const ohms = fc.constantFrom(0.01, 1, 100, 1e4, 3e7);
    const fault: fc.Arbitrary<Fault> = fc.oneof(
      fc.record({ kind: fc.constant("open" as const), at: place }),
      fc.record({ kind: fc.constant("seriesResistance" as const), at: place, ohms }),
      fc.record({ kind: fc.constant("shortToGround" as const), at: point, ohms }),
      fc.record({
        kind: fc.constant("shortToSupply" as const),
        at: point,
        supply: fc.constant("F4:2"),
        ohms,
      }),
      fc.record({ kind: fc.constant("shortBetween" as const), at: point, other: point, ohms }),
    );
    fc.assert(
      fc.property(
        fc.array(fault, { minLength: 1, maxLength: 3 }),
        fc.constantFrom(...Object.values(situations)),
        (faults, conditions) => {
          const drive = new Drive(faults, conditions);
          for (const [id, value] of readings(drive)) expect(Number.isFinite(value), id).toBe(true);
          const { state } = drive.now;
          expect(must(settle(drive.vehicle, state)).state).toEqual(state);
        },
      ),
      { seed: 20260101, numRuns: 50 },
    );
  }, 60_000);
});
