import { type CircuitElement, operatingPoint, prepareCircuit, type Relay } from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

const relay = (numbers: Partial<Relay> = {}): Relay => ({
  kind: "relay",
  id: "k",
  coilPlus: "86",
  coilMinus: "0",
  common: "30",
  normallyOpen: "87",
  normallyClosed: "87a",
  ...numbers,
});
const supply = (volts: number, positive = "86"): CircuitElement => ({
  kind: "voltageSource",
  id: `v${positive}`,
  positive,
  negative: "0",
  volts,
});
const load = (a: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id: `r${a}`,
  a,
  b: "0",
  ohms,
});

function prepared(volts: number, numbers: Partial<Relay> = {}) {
  const elements = [supply(volts), supply(12, "30"), relay(numbers), load("87", 1.2), load("87a", 1.2)];
  const circuit = prepareCircuit({ ground: "0", elements });
  if (!circuit.ok) throw new Error(circuit.error.message);
  return circuit.value;
}

function at(circuit: ReturnType<typeof prepared>, volts?: number) {
  if (volts !== undefined) expect(circuit.set("v86", { volts })).toMatchObject({ ok: true });
  const point = circuit.operatingPoint();
  if (!point.ok) throw new Error(point.error.message);
  return point.value;
}

/** Volts at which the relay changes over when its coil's supply goes from one value towards another in small steps. */
function threshold(numbers: Partial<Relay>, from: number, to: number, step = 0.05): number {
  const circuit = prepared(from, numbers);
  const before = at(circuit).quantity("k", "isEnergised");
  for (let volts = from; Math.abs(to - volts) > step / 2; volts += Math.sign(to - from) * step)
    if (at(circuit, volts).quantity("k", "isEnergised") !== before) return volts;
  throw new Error("it never changed over");
}

/**
 * Data sheets of 12 V relays: coil Ω, pull-in no higher than, drop-out no lower than. Sources: OEN 78, 79 and 40
 * (dtsheet.com 683071, 683074, 682964), an ISO micro relay of 30 A (fooclesmod.com), a circuit-board relay (directindustry).
 */
const sheets = [
  ["OEN 78", 100, 7.2, 1.2],
  ["OEN 79", 75, 8, undefined],
  ["OEN 40", 260, 7.2, 1.2],
  ["ISO micro", 80, 8.4, 1.2],
  ["board relay", 300, 7, 0.5],
] as const;

describe("coils", () => {
  it.each(sheets)(
    "%s draws what its %d Ω say and keeps its sheet's limits",
    (_name, ohms, pullIn, dropOut) => {
      expect(at(prepared(12, { ohms })).amps("k")).toBeCloseTo(12 / ohms, 12);
      expect(threshold({ ohms }, 0, 12)).toBeLessThanOrEqual(pullIn);
      if (dropOut !== undefined) expect(threshold({ ohms }, 12, 0)).toBeGreaterThanOrEqual(dropOut);
    },
  );

  it("the board relay's 300 Ω draw its printed 40 mA, a coil of 1.3 W has about 109 Ω (sa.tilga.com)", () => {
    expect(at(prepared(12, { ohms: 300 })).amps("k")).toBeCloseTo(0.04, 12);
    expect(12 * at(prepared(12, { ohms: 109 })).amps("k")).toBeCloseTo(1.3, 1);
  });

  // fooclesmod.com prints 71.6 Ω; 80 ∥ 680 = 71.58.
  it("measures 71.58 Ω with 680 Ω across its 80 Ω coil", () => {
    const amps = at(prepared(12, { ohms: 80, suppressor: "resistor" })).amps("k");
    expect(12 / amps).toBeCloseTo(71.58, 2);
  });

  it("changes over at the stated volts and stays between them as it was", () => {
    const numbers = { pullInVolts: 7, dropOutVolts: 3 };
    expect(threshold(numbers, 0, 12, 0.01)).toBeCloseTo(7, 1);
    expect(threshold(numbers, 12, 0, 0.01)).toBeCloseTo(3, 1);
    const circuit = prepared(0, numbers);
    const states = [5, 8, 5, 2, 5].map((volts) => at(circuit, volts).quantity("k", "isEnergised"));
    expect(states).toEqual([0, 1, 1, 0, 0]);
  });

  it("needs as many more volts as its copper has more ohms when hot: 1.3144 times at 100 °C", () => {
    const cold = threshold({}, 0, 12, 0.01);
    expect(threshold({ celsius: 100 }, 0, 12, 0.01) / cold).toBeCloseTo(1.3144, 2);
  });

  it("works either way round without a diode", () => {
    expect(threshold({}, 0, -12, 0.01)).toBeCloseTo(-6.8, 1);
  });
});

describe("suppression diode", () => {
  it("passes nothing the right way round", () => {
    const bare = at(prepared(12)).amps("k");
    expect(at(prepared(12, { suppressor: "diode" })).amps("k")).toBeCloseTo(bare, 8);
  });

  it("shorts the feed the wrong way round", () => {
    const elements: CircuitElement[] = [
      supply(12, "feed"),
      { kind: "resistor", id: "w", a: "feed", b: "86", ohms: 0.1 },
      supply(12, "30"),
      relay({ suppressor: "reversedDiode" }),
      load("87", 1.2),
      load("87a", 1.2),
    ];
    const result = operatingPoint({ ground: "0", elements });
    if (!result.ok) throw new Error(result.error.message);
    // Some 55 A through wire and diode: any fuse of a coil's feed blows.
    expect(-result.value.amps("vfeed")).toBeGreaterThan(40);
  });
});

describe("contacts", () => {
  it("change over", () => {
    const off = at(prepared(0));
    const on = at(prepared(12));
    expect([off.volts("87"), off.volts("87a")].map(Math.round)).toEqual([0, 12]);
    expect([on.volts("87"), on.volts("87a")].map(Math.round)).toEqual([12, 0]);
  });

  // OEN 78: 100 mV at 10 A at most (dtsheet 683071).
  it("drop no more than a sheet's 100 mV at 10 A", () => {
    const on = at(prepared(12));
    const amps = on.volts("87") / 1.2;
    expect(amps).toBeCloseTo(10, 0);
    expect(((12 - on.volts("87")) / amps) * 10).toBeLessThanOrEqual(0.1);
  });

  it("can be burnt, welded and stuck", () => {
    const burnt = at(prepared(12, { makeClosedOhms: 1.2 }));
    expect(burnt.volts("87")).toBeCloseTo(6, 9);
    const welded = at(prepared(0, { makeOpenOhms: 5e-3 }));
    expect(welded.volts("87")).toBeGreaterThan(11.9);
    expect(at(prepared(12, { heldReleased: true })).quantity("k", "isEnergised")).toBe(0);
    expect(at(prepared(0, { heldEnergised: true })).quantity("k", "isEnergised")).toBe(1);
  });

  it("are both optional, but not at once", () => {
    const { normallyClosed: _, ...make } = relay();
    const { normallyOpen: __, ...none } = make;
    const build = (k: Relay) => prepareCircuit({ ground: "0", elements: [supply(12), supply(12, "30"), k] });
    expect(build(make)).toMatchObject({ ok: true });
    expect(build(none)).toMatchObject({ ok: false, error: { code: "invalid_element", element: "k" } });
  });
});

describe("a buzzer: the coil through its own break contact", () => {
  const buzzer = [supply(12, "30"), relay({ coilPlus: "87a" }), load("87", 1.2)];
  it("has no operating point, and the error names it", () => {
    expect(operatingPoint({ ground: "0", elements: buzzer })).toMatchObject({
      ok: false,
      error: { code: "no_convergence", element: "k" },
    });
  });
});
