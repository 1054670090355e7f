import type { TransientCase } from "./transient-cases";

const supply = (volts: number) =>
  ({ kind: "voltageSource", id: "v", positive: "a", negative: "0", volts }) as const;

/** 12 V switched onto R, 10 mH and 100 µF in series: 20 Ω is the critical resistance, 2·√(L/C). */
const seriesResonance = (ohms: number): TransientCase => ({
  network: {
    ground: "0",
    elements: [
      supply(12),
      { kind: "resistor", id: "r", a: "a", b: "b", ohms },
      { kind: "inductor", id: "l", a: "b", b: "c", henries: 10e-3 },
      { kind: "capacitor", id: "c", a: "c", b: "0", farads: 100e-6 },
    ],
  },
  run: { untilSeconds: 0.03, start: "rest" },
  deck: ["v1 a 0 12", `r1 a b ${ohms}`, "l1 b c 10m ic=0", "c1 c 0 100u ic=0"],
  compared: [
    { volts: "c", theirs: "v(c)" },
    { volts: "b", theirs: "v(b)" },
    { amps: "l", theirs: "i(l1)" },
  ],
});

export const linearCases: Readonly<Record<string, TransientCase>> = {
  "capacitor charged through a resistor": {
    network: {
      ground: "0",
      elements: [
        supply(15),
        { kind: "resistor", id: "r", a: "a", b: "b", ohms: 10e3 },
        { kind: "capacitor", id: "c", a: "b", b: "0", farads: 100e-6 },
      ],
    },
    run: { untilSeconds: 8, start: "rest" },
    deck: ["v1 a 0 15", "r1 a b 10k", "c1 b 0 100u ic=0"],
    compared: [
      { volts: "b", theirs: "v(b)" },
      { amps: "v", theirs: "i(v1)" },
    ],
  },
  "current rising in a coil": {
    network: {
      ground: "0",
      elements: [
        supply(15),
        { kind: "resistor", id: "r", a: "a", b: "b", ohms: 3 },
        { kind: "inductor", id: "l", a: "b", b: "0", henries: 1 },
      ],
    },
    run: { untilSeconds: 4, start: "rest" },
    deck: ["v1 a 0 15", "r1 a b 3", "l1 b 0 1 ic=0"],
    compared: [
      { amps: "l", theirs: "i(l1)" },
      { volts: "b", theirs: "v(b)" },
    ],
  },
  "resonance that rings": seriesResonance(4),
  "resonance critically damped": seriesResonance(20),
  "resonance that creeps": seriesResonance(80),
};
