import type { TransientCase } from "./transient-cases";

const diode = { saturationAmps: 1e-10, emission: 1.2, seriesOhms: 0.02 } as const;
const diodeModel = ".model rect d(is=1e-10 n=1.2 rs=0.02)";
const edge = 1e-9;

export const switchingCases: Readonly<Record<string, TransientCase>> = {
  "rectifier with a smoothing capacitor": {
    network: {
      ground: "0",
      elements: [
        { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 0, ohms: 0.5 },
        { kind: "diode", id: "d", anode: "a", cathode: "b", ...diode },
        { kind: "capacitor", id: "c", a: "b", b: "0", farads: 1e-3 },
        { kind: "resistor", id: "load", a: "b", b: "0", ohms: 50 },
      ],
    },
    run: {
      untilSeconds: 0.1,
      start: "rest",
      drives: [{ element: "v", field: "volts", wave: { kind: "sine", amplitude: 20, hertz: 50 } }],
    },
    deck: ["v1 s 0 sin(0 20 50)", "rs s a 0.5", diodeModel, "d1 a b rect", "c1 b 0 1m ic=0", "rl b 0 50"],
    maxStepSeconds: 5e-6,
    compared: [
      { volts: "b", theirs: "v(b)" },
      { volts: "a", theirs: "v(a)" },
      { amps: "v", theirs: "i(v1)" },
    ],
  },
  "pulse-width modulation into a coil with a free-wheeling diode": {
    network: {
      ground: "0",
      elements: [
        { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 13, ohms: 0.02 },
        { kind: "switch", id: "s", a: "a", b: "b", closed: false, closedOhms: 0.01, openOhms: 1e7 },
        { kind: "diode", id: "d", anode: "0", cathode: "b", ...diode },
        { kind: "inductor", id: "l", a: "b", b: "c", henries: 5e-3 },
        { kind: "resistor", id: "r", a: "c", b: "0", ohms: 2 },
      ],
    },
    run: {
      untilSeconds: 10e-3,
      start: "rest",
      drives: [
        {
          element: "s",
          field: "closed",
          wave: { kind: "pulse", low: false, high: true, hertz: 1000, duty: 0.3, delaySeconds: 1e-4 },
        },
      ],
    },
    deck: [
      "v1 s 0 13",
      "rs s a 0.02",
      ".model gate sw(vt=0.5 vh=0 ron=0.01 roff=1e7)",
      `vg g 0 pulse(0 1 ${1e-4 - edge / 2} ${edge} ${edge} ${0.3e-3 - edge} 1e-3)`,
      "s1 a b g 0 gate",
      diodeModel,
      "d1 0 b rect",
      "l1 b c 5m ic=0",
      "r1 c 0 2",
    ],
    maxStepSeconds: 0.5e-6,
    compared: [
      { amps: "l", theirs: "i(l1)" },
      { volts: "b", theirs: "v(b)" },
      { volts: "c", theirs: "v(c)" },
    ],
  },
};
