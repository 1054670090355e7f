import type { CircuitElement, Network } from "@probeworthy/circuit";

/** Networks written by hand, each for one thing that could go wrong. Ground is "0". */
const R = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const V = (id: string, positive: string, negative: string, volts: number, ohms?: number): CircuitElement => ({
  kind: "voltageSource",
  id,
  positive,
  negative,
  volts,
  ...(ohms === undefined ? {} : { ohms }),
});
const I = (id: string, from: string, to: string, amps: number): CircuitElement => ({
  kind: "currentSource",
  id,
  from,
  to,
  amps,
});
const S = (id: string, a: string, b: string, closed: boolean): CircuitElement => ({
  kind: "switch",
  id,
  a,
  b,
  closed,
});
const D = (id: string, anode: string, cathode: string, law: object = {}): CircuitElement => ({
  kind: "diode",
  id,
  anode,
  cathode,
  ...law,
});
const E = (id: string, a: string, b: string, ratedWatts: number, law: object = {}): CircuitElement => ({
  kind: "filament",
  id,
  a,
  b,
  ratedVolts: 12,
  ratedWatts,
  ...law,
});
const regulator = (limitAmps: number, law: object = {}): CircuitElement => ({
  kind: "regulator",
  id: "reg",
  input: "in",
  output: "out",
  reference: "ref",
  volts: 5,
  limitAmps,
  outputOhms: 0.1,
  ...law,
});
const control = (type: "vcvs" | "vccs" | "ccvs" | "cccs", gain: number, law: object): CircuitElement => ({
  kind: "controlledSource",
  id: "k",
  type,
  positive: "o",
  negative: "0",
  gain,
  ...law,
});

const volts = { controlPositive: "m", controlNegative: "0" };
const divider = [V("v", "a", "0", 12, 0.01), R("r1", "a", "m", 1e3), R("r2", "m", "0", 2.2e3)];
const railed = (load: number, limit: number, supply = 12, law: object = {}) => [
  V("v", "in", "0", supply, 0.05),
  R("gnd", "ref", "0", 0.02),
  regulator(limit, law),
  R("load", "out", "ref", load),
];

const cases: Readonly<Record<string, readonly CircuitElement[]>> = {
  "starter: 200 A through milliohms": [
    V("v", "a", "0", 12.6, 5e-3),
    R("cable", "a", "b", 1e-3),
    R("starter", "b", "c", 0.054),
    R("strap", "c", "0", 1e-3),
    R("meter", "b", "0", 1e7),
  ],
  "milliohm and 30 megohm in one network": [
    V("v", "a", "0", 12, 0.02),
    R("wire", "a", "b", 1e-3),
    R("load", "b", "0", 0.06),
    R("bleed", "b", "c", 3e7),
    R("meter", "c", "0", 1e7),
  ],
  "two batteries in parallel": [
    V("v1", "a", "0", 12.8, 0.01),
    V("v2", "a", "0", 11.2, 0.03),
    R("r", "a", "0", 1),
  ],
  "ideal sources in series off ground": [
    V("v1", "a", "b", 5),
    V("v2", "b", "c", 3),
    R("r1", "a", "0", 1e3),
    R("r2", "c", "0", 470),
  ],
  "ideal source with both ends on resistors": [
    V("v", "p", "n", 9),
    R("r1", "p", "0", 1e3),
    R("r2", "n", "0", 33),
    R("r3", "p", "n", 120),
  ],
  "current source into a divider": [
    I("i", "0", "m", 1e-3),
    R("r1", "m", "k", 680),
    R("r2", "k", "0", 330),
    R("r3", "m", "0", 1e4),
  ],
  "current between two ungrounded nodes": [
    I("i", "p", "q", 0.02),
    R("r1", "p", "q", 50),
    R("r2", "p", "0", 100),
    R("r3", "q", "0", 200),
  ],
  "switches closed and open": [
    V("v", "a", "0", 12),
    S("s1", "a", "b", true),
    R("r1", "b", "c", 10),
    S("s2", "c", "0", false),
    R("r2", "c", "0", 1e5),
  ],
  "vcvs amplifier": [...divider, control("vcvs", 2.5, volts), R("load", "o", "0", 100)],
  "vcvs of gain 1e6 with feedback": [
    V("v", "a", "0", 1),
    R("r1", "a", "m", 1e3),
    R("r2", "m", "o", 1e4),
    control("vcvs", -1e6, volts),
    R("load", "o", "0", 2e3),
  ],
  vccs: [...divider, control("vccs", -2e-3, volts), R("load", "o", "0", 470)],
  "ccvs sensing a resistor": [
    V("v", "a", "0", 12),
    R("sensed", "a", "m", 100),
    R("r2", "m", "0", 200),
    control("ccvs", 25, { controlElement: "sensed" }),
    R("load", "o", "m", 1e3),
  ],
  "cccs sensing an ideal source": [
    V("sensed", "a", "0", 12),
    R("r1", "a", "0", 100),
    control("cccs", -0.5, { controlElement: "sensed" }),
    R("load", "o", "a", 10),
    R("r3", "o", "0", 33),
  ],
  "diode forward": [V("v", "a", "0", 5), R("r", "a", "b", 1e3), D("d", "b", "0")],
  "diode blocked, read through 10 megohm": [
    V("v", "a", "0", 12),
    D("d", "b", "a"),
    R("meter", "b", "0", 1e7),
  ],
  "two blocked diodes with a node between": [V("v", "a", "0", 14), D("d1", "m", "a"), D("d2", "0", "m")],
  "clamp to a rail": [
    V("v", "a", "0", 14),
    R("r", "a", "b", 1e4),
    D("d", "b", "rail"),
    V("v5", "rail", "0", 5),
  ],
  "hot leaky diode": [
    V("v", "a", "0", 5),
    R("r", "a", "b", 1e3),
    D("d", "b", "0", { saturationAmps: 1e-11, emission: 1.8, celsius: 110 }),
  ],
  "diode with series resistance at 30 A": [
    V("v", "a", "0", 14, 0.01),
    D("d", "a", "b", { seriesOhms: 0.01, saturationAmps: 1e-10 }),
    R("r", "b", "0", 0.4),
  ],
  "bridge rectifier": [
    V("v", "p", "q", 10, 1),
    D("d1", "p", "plus"),
    D("d2", "q", "plus"),
    D("d3", "0", "p"),
    D("d4", "0", "q"),
    R("load", "plus", "0", 100),
  ],
  "bridge rectifier reversed": [
    V("v", "p", "q", -10, 1),
    D("d1", "p", "plus"),
    D("d2", "q", "plus"),
    D("d3", "0", "p"),
    D("d4", "0", "q"),
    R("load", "plus", "0", 100),
  ],
  "zener regulator": [
    V("v", "a", "0", 20),
    R("rs", "a", "b", 250),
    R("rl", "b", "0", 1e3),
    D("z", "0", "b", { breakdownVolts: 15 }),
  ],
  "zener starved": [
    V("v", "a", "0", 20),
    R("rs", "a", "b", 1e3),
    R("rl", "b", "0", 1e3),
    D("z", "0", "b", { breakdownVolts: 15 }),
  ],
  "zener back to back": [
    V("v", "a", "0", -24),
    R("rs", "a", "b", 470),
    D("z1", "b", "m", { breakdownVolts: 8.2 }),
    D("z2", "0", "m", { breakdownVolts: 8.2 }),
  ],
  "six diodes in series": [
    V("v", "a", "0", 12),
    R("r", "a", "n0", 220),
    ...[0, 1, 2, 3, 4, 5].map((k) => D(`d${k}`, `n${k}`, k === 5 ? "0" : `n${k + 1}`)),
  ],
  "four unequal diodes in parallel": [
    V("v", "a", "0", 5),
    R("r", "a", "b", 10),
    ...[1e-15, 1e-14, 1e-13, 1e-12].map((saturationAmps, k) =>
      D(`d${k}`, "b", "0", { saturationAmps, emission: 1 + k / 10 }),
    ),
  ],
  "lamp at its rating": [V("v", "a", "0", 12, 0.02), E("e", "a", "0", 21)],
  "lamp fed by an ohmmeter": [I("i", "0", "a", 1e-3), E("e", "a", "0", 21)],
  "two lamps in series, unequal": [V("v", "a", "0", 12), E("e1", "a", "b", 21), E("e2", "b", "0", 5)],
  "lamp through a corroded ground": [
    V("v", "a", "0", 12.6, 0.01),
    E("e", "a", "g", 55),
    R("bad", "g", "0", 1.5),
    R("meter", "g", "0", 1e7),
  ],
  "lamp backwards at 24 V": [
    V("v", "a", "0", -24, 0.05),
    E("e", "a", "0", 21, { exponent: 0.6, coldRatio: 0.1 }),
  ],
  "two lamps back-fed through a lost ground": [
    V("v", "a", "0", 12.6, 0.01),
    E("e1", "a", "g", 21),
    E("e2", "g", "b", 5),
    R("r", "b", "0", 0.1),
    R("lost", "g", "0", 1e5),
  ],
  "regulator at rest": railed(1e5, 0.1),
  "regulator loaded": railed(100, 0.1),
  "regulator at its limit": railed(20, 0.1),
  "regulator shorted": railed(1e-2, 0.1, 12, { quiescentAmps: 5e-3 }),
  "regulator in dropout": railed(1e3, 0.1, 5.2, { dropoutVolts: 0.4, quiescentAmps: 5e-3 }),
  "regulator without supply": [...railed(1e3, 0.1, 0.2), R("bleed", "in", "0", 1e4)],
  "regulator output pulled above its target": [...railed(1e4, 0.1), R("pull", "in", "out", 1e3)],
  "control module: regulator, sensor, clamp": [
    V("v", "in", "0", 12.6, 0.01),
    R("gnd", "ref", "0", 0.01),
    regulator(0.05, { quiescentAmps: 20e-3, dropoutVolts: 0.6 }),
    R("up", "out", "sig", 1e3),
    R("low", "sig", "sgnd", 1e3),
    R("wire", "sgnd", "ref", 0.2),
    D("clamp", "sig", "out"),
    D("guard", "ref", "sig"),
    R("meter", "sig", "0", 1e7),
  ],
};

export const handNetworks: readonly (readonly [string, Network])[] = Object.entries(cases).map(
  ([name, elements]) => [name, { ground: "0", elements }],
);
