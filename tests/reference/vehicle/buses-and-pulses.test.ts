import { type Component, type Fault, prepareVehicle, settle, startState } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { buildRig, must, number, plug, type Rig, wire } from "./rig";

type Module = Extract<Component, { kind: "module" }>;

const module = (id: string, terminals: readonly string[], rest: Partial<Module>): Module => ({
  kind: "module",
  id,
  title: id,
  terminals: ["30", "31", ...terminals].map((name) => ({ name, function: name })),
  ground: "31",
  internalGroundOhms: 1e-4,
  supply: { terminal: "30", wakeVolts: 7, dropoutVolts: 6, quiescentAmps: 1e-6, runningAmps: 1e-6 },
  signals: [],
  ...rest,
});

/** Modules on one battery, each at a plug of its own with its terminals in order; `wires` join cavities. */
const rigOf = (modules: readonly Module[], wires: readonly [string, string][], rest: Partial<Rig> = {}) =>
  buildRig({
    components: [...modules, ...(rest.components ?? [])],
    connectors: [
      ...modules.map(({ id, terminals }, position) =>
        plug(
          `X${position + 1}`,
          id,
          terminals.map(({ name }) => name),
        ),
      ),
      ...(rest.connectors ?? []),
    ],
    conductors: [
      wire("W2", "G1:+", "XS1", 0.01, 120),
      ...modules.flatMap((_, position) => [
        wire(`W${10 + position}`, "XS1", `X${position + 1}.1`),
        wire(`W${20 + position}`, `X${position + 1}.2`, "XE1"),
      ]),
      ...wires.map(([from, to], position) => wire(`W${30 + position}`, from, to)),
    ],
    splices: ["XS1", "XS2", "XS3"],
    conditions: rest.conditions ?? [],
  });

const settled = (
  document: Parameters<typeof prepareVehicle>[0],
  faults: readonly Fault[] = [],
  values = {},
) => {
  const vehicle = must(prepareVehicle(document, faults));
  return must(settle(vehicle, must(startState(vehicle, values))));
};

const lin = (id: string, role: "master" | "slave", dominantShare: number, from: string): Module =>
  module(id, ["LIN"], {
    lin: {
      terminal: "LIN",
      role,
      dominantShare,
      sends: [{ message: `from${id}`, value: 1 }],
      receives: [{ message: `from${from}`, from, substitute: 0 }],
    },
  });

/** ISO 17987-4: master 1 kΩ, slave 30 kΩ, receivers at 40 % and 60 % of the supply (from memory). */
describe("LIN", () => {
  const quiet: readonly Fault[] = ["A1", "A2"].map((component) => ({ kind: "silentNode", component }));
  const wiring: readonly [string, string][] = [
    ["X1.3", "XS2"],
    ["XS2", "X2.3"],
  ];

  it("rests near the supply and shows a meter a steady figure below it while there is traffic", () => {
    // Source: https://www.mvwautotechniek.nl/en/lin-bus-diagnosis: about 12 V without traffic, about 6 to 10 V with it,
    // 0 V when shorted.
    const document = rigOf([lin("A1", "master", 0.2, "A2"), lin("A2", "slave", 0.15, "A1")], wiring);
    expect(settled(document, quiet).volts("XS2")).toBeGreaterThan(11.5);
    const talking = settled(document);
    expect(talking.volts("XS2")).toBeGreaterThan(6);
    expect(talking.volts("XS2")).toBeLessThan(10);
    const shorted = settled(document, [{ kind: "shortToGround", at: "X1.3:h", ohms: 0.05 }]);
    expect(shorted.volts("XS2")).toBeLessThan(0.01);
    expect(shorted.modules.A1?.heard.fromA2).toBe(false);
  });

  it("pulls its wire down to less than about 1 V", () => {
    // All of the mean's drop from rest falls into the master's dominant share: (rest − mean) / share below rest.
    const document = rigOf([lin("A1", "master", 0.4, "A2"), lin("A2", "slave", 0, "A1")], wiring);
    const rest = settled(document, quiet).volts("XS2");
    const dominant = rest - (rest - settled(document).volts("XS2")) / 0.4;
    expect(dominant).toBeGreaterThan(0.1);
    expect(dominant).toBeLessThan(1.2);
  });

  it("still works with 500 Ω in a slave's wire and not with 2.2 kΩ, which leaves it above 60 % of the supply", () => {
    // Divider of the slave's pull-down and the series resistance against the master's 1 kΩ: R/(R + 1 kΩ) of the supply
    // at the master, 34 % with 540 Ω and 69 % with 2.24 kΩ.
    const document = rigOf([lin("A1", "master", 0.2, "A2"), lin("A2", "slave", 0.15, "A1")], wiring);
    const withOhms = (ohms: number) =>
      settled(document, [{ kind: "seriesResistance", at: "W31", ohms }]).modules.A1?.heard.fromA2;
    expect(withOhms(500)).toBe(true);
    expect(withOhms(2200)).toBe(false);
  });
});

/** ISO 11898-2: a terminator at each end of the bus, so 60 Ω between the wires; one missing leaves 120 Ω, a third 40 Ω. */
describe("CAN terminators", () => {
  const can = (id: string, terminationOhms?: number): Module =>
    module(id, ["CH", "CL"], {
      bus: {
        canHigh: "CH",
        canLow: "CL",
        ...(terminationOhms === undefined ? {} : { terminationOhms }),
        dominantShare: 0.1,
        sends: [],
        receives: [],
      },
    });
  const document = rigOf(
    [can("A1", 120), can("A2")],
    [
      ["X1.3", "XS2"],
      ["X1.4", "XS3"],
      ["XS2", "X2.3"],
      ["XS3", "X2.4"],
      ["XS2", "R1:1"],
      ["XS3", "R1:2"],
    ],
    { components: [{ kind: "resistor", id: "R1", title: "Terminator", ohms: 120, form: "terminator" }] },
  );

  it.each<[string, number, Fault[]]>([
    ["both", 60, []],
    ["the one in a module missing", 120, [{ kind: "terminatorMissing", component: "A1" }]],
    ["the resistor missing", 120, [{ kind: "terminatorMissing", component: "R1" }]],
    ["one drifted to 60 Ω", 40, [{ kind: "terminatorDrifted", component: "A1", ohms: 60 }]],
    ["a third", 40, [{ kind: "terminatorExtra", at: "XS2", other: "XS3", ohms: 120 }]],
  ])("%s: %s Ω on a dead bus", (_, expected, faults) => {
    // The battery's clamp is off: nothing feeds the bus, and an ohmmeter's milliampere flows through it.
    const dead = must(prepareVehicle(document, [...faults, { kind: "open", at: "W2" }]));
    const now = must(
      settle(dead, must(startState(dead)), [
        { kind: "currentSource", id: "meter", from: "X1.4:h", to: "X1.3:h", amps: 0.001 },
      ]),
    );
    expect((now.volts("X1.3:h") - now.volts("X1.4:h")) / 0.001).toBeCloseTo(expected, 0);
  });
});

describe("pulses", () => {
  it("of 7 and 14 mA in 100 Ω are 0.70 and 1.40 V", () => {
    // Two-level wheel speed sensors. Source: common practice of the trade (from memory); the figures are Ohm's law.
    const document = rigOf(
      [
        module("A1", ["S"], {
          inputs: [{ terminal: "S", pull: { to: "ground", ohms: 100 }, pulseSwingVolts: 0.4 }],
          signals: [{ name: "wheel", value: { hertz: "S" } }],
        }),
      ],
      [
        ["XS1", "B1:1"],
        ["B1:2", "X1.3"],
      ],
      {
        components: [
          {
            kind: "activeSpeedSensor",
            id: "B1",
            title: "Wheel speed",
            lowAmps: 0.007,
            highAmps: 0.014,
            minimumVolts: 4,
            hertz: { condition: "wheelHertz" },
          },
        ],
        conditions: [number("wheelHertz", 0)],
      },
    );
    const standing = settled(document);
    expect(standing.volts("X1.3:h") - standing.volts("X1.2:h")).toBeCloseTo(0.7, 3);
    const rolling = settled(document, [], { wheelHertz: 85 });
    const { volts, hertz } = rolling.alternating("X1.3:h", "X1.2:h");
    const mean = rolling.volts("X1.3:h") - rolling.volts("X1.2:h");
    expect(mean - volts).toBeCloseTo(0.7, 3);
    expect(mean + volts).toBeCloseTo(1.4, 3);
    expect(hertz).toBe(85);
    expect(rolling.modules.A1?.signals.wheel).toBe(85);
  });

  it("of a fixed width give a meter duty times the supply", () => {
    // Mean of a rectangular wave between 0 and V with duty d: d · V.
    const chopped = (duty: number) =>
      rigOf(
        [
          module("A1", ["P", "N"], {
            outputs: [
              {
                kind: "chopper",
                name: "fan",
                plus: "P",
                minus: "N",
                feed: "30",
                return: "31",
                duty,
                hertz: 100,
                onOhms: 0.005,
              },
            ],
          }),
        ],
        [
          ["X1.3", "R1:1"],
          ["R1:2", "X1.4"],
        ],
        {
          components: [{ kind: "resistor", id: "R1", title: "Load", ohms: 10 }],
        },
      );
    for (const duty of [0.1, 0.25, 0.5, 0.75, 1]) {
      const now = settled(chopped(duty));
      const feed = now.volts("X1.1:c") - now.volts("X1.2:c");
      expect((now.volts("X1.3:h") - now.volts("X1.4:h")) / feed).toBeCloseTo(duty, 2);
    }
  });
});
