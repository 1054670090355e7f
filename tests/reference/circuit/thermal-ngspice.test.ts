import { type CircuitElement, type Network, operatingPoint, transient } from "@probeworthy/circuit";
import { beforeAll, describe, expect, it } from "vitest";
import { type NgspiceEngine, startEngine } from "./ngspice-engine";
import { runTransientDeck } from "./ngspice-waveforms";

// Parts that heat themselves against ngspice 45 (package eecircuit-engine): a node whose volts are a temperature in
// kelvins or °C, a capacitor for the heat it holds, behavioural sources for what comes and goes. The equations are written
// here in temperature, the engine's own in other unknowns.

let engine: NgspiceEngine;
beforeAll(async () => {
  engine = await startEngine();
});

const tight = { relativeTolerance: 1e-7, voltTolerance: 1e-8, ampTolerance: 1e-9, internalTolerance: 1 };

/** Samples of an element's amps and of the ngspice vector that stands for them, at times off every edge. */
async function compare(
  network: Network,
  element: string,
  deck: readonly string[],
  untilSeconds: number,
  start: "rest" | "operatingPoint" = "rest",
) {
  const at = Array.from({ length: 300 }, (_, i) => (untilSeconds * (i + 0.3719)) / 300);
  const ours = transient(network, { untilSeconds, start, at, ...tight });
  if (!ours.ok) throw new Error(ours.error.message);
  const theirs = await runTransientDeck(engine, { lines: deck, untilSeconds, isFromRest: true });
  const expected = theirs.samplesAt("i(vm)", at);
  const largest = Math.max(...expected.map(Math.abs));
  return Math.max(
    ...Array.from(ours.value.amps(element), (amps, i) => Math.abs(amps - (expected[i] ?? 0)) / largest),
  );
}

describe("a filament from cold", () => {
  it.each([
    [12, 21, 0.05, 1 / 15, 0.55],
    [12, 55, 0.02, 1 / 14, 0.54],
    [120, 100, 0.5, 1 / 15, 0.55],
  ])("%d V, %d W behind %d Ω", async (volts, watts, ohms, coldRatio, exponent) => {
    const cold = 293.15;
    const warmUp = 0.06 * (watts / volts) ** (2 / 3);
    // Kept off zero, where ngspice begins its search.
    const heated = `(max(V(t), 1)/${cold})`;
    const coldOhms = (coldRatio * volts ** 2) / watts;
    const bend = 2 / (1 - exponent);
    const knee = volts / Math.sqrt(coldRatio ** -bend - 1);
    const heat = (watts * warmUp) / (cold * (coldRatio ** (-1 / 1.2) - 1));
    const given = `${knee ** 2 / coldOhms} * (${heated}**${1.2 * (bend - 1)} - ${heated}**(-1.2))`;
    const worst = await compare(
      {
        ground: "0",
        elements: [
          { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts, ohms },
          {
            kind: "filament",
            id: "e",
            a: "a",
            b: "0",
            ratedVolts: volts,
            ratedWatts: watts,
            coldRatio,
            exponent,
          },
        ],
      },
      "e",
      [
        `v1 s 0 ${volts}`,
        `r1 s a ${ohms}`,
        "vm a f 0",
        `bf f 0 I = V(f) / (${coldOhms} * ${heated}**1.2)`,
        `c1 t 0 ${heat} ic=${cold}`,
        `bt 0 t I = V(f)*V(f) / (${coldOhms} * ${heated}**1.2) - ${given}`,
      ],
      3 * warmUp,
    );
    expect(worst).toBeLessThan(2e-4);
  });
});

const protector = {
  kind: "switchingPtc",
  id: "p",
  a: "a",
  b: "b",
  coldOhms: 0.2,
  switchCelsius: 110,
  coefficient: 0.25,
  wattsPerKelvin: 0.035,
  joulesPerKelvin: 0.5,
  ambientCelsius: 25,
} as const;

const ptcDeck = (volts: number, ohms: number) => [
  `v1 s 0 ${volts}`,
  "vm s a 0",
  "bp a b I = V(a,b) * 5 * (1e-4 + (1 - 1e-4) / (1 + exp(0.25*(V(t) - 110))))",
  `rb b 0 ${ohms}`,
  "c1 t 0 0.5 ic=25",
  "bt 0 t I = V(a,b) * I(vm) - 0.035 * (V(t) - 25)",
];

describe("a switching PTC", () => {
  const elements = (volts: number, ohms: number): CircuitElement[] => [
    { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts },
    protector,
    { kind: "resistor", id: "m", a: "b", b: "0", ohms },
  ];

  it.each([
    ["stays cool in series with a turning motor", 12, 4, 60],
    ["trips in series with a stalled one", 12, 1, 120],
    ["trips at twice the volts", 24, 4, 15],
  ])("%s", async (_what, volts, ohms, seconds) => {
    const network = { ground: "0", elements: elements(volts, ohms) };
    expect(await compare(network, "p", ptcDeck(volts, ohms), seconds)).toBeLessThan(2e-4);
  });

  it("settles at once where ngspice comes to rest after a long time", async () => {
    for (const [volts, ohms] of [
      [12, 4],
      [12, 1],
      [24, 4],
    ] as const) {
      const deck = {
        lines: ptcDeck(volts, ohms),
        untilSeconds: 1500,
        maxStepSeconds: 0.05,
        isFromRest: true,
      };
      const rest = await runTransientDeck(engine, deck);
      const [celsius = Number.NaN] = rest.samplesAt("v(t)", [1499]);
      const point = operatingPoint({ ground: "0", elements: elements(volts, ohms) });
      if (!point.ok) throw new Error(point.error.message);
      expect(Math.abs(point.value.quantity("p", "celsius") - celsius)).toBeLessThan(1e-3);
    }
  });
});

describe("a fuse link", () => {
  it.each([
    [20, 3.38, 98, 5],
    [20, 3.38, 98, 45],
    [40, 1.44, 96, 300],
  ])("%d A, %d mΩ, %d mV under %d A", async (ratedAmps, milliohms, millivolts, amps) => {
    const coldOhms = milliohms / 1e3;
    const rise = millivolts / 1e3 / (coldOhms * ratedAmps) - 1;
    // R/Rcold − 1 = 1.6·w/(1 + w); solved for the w of the rated point.
    const half = (millivolts / 1e3) ** 2 * (1.6 / rise - 1);
    const { columns } = await engine.run([
      `i1 0 a ${amps}`,
      `bf a 0 I = V(a) / (${coldOhms} * (1 + 1.6 * V(a)*V(a) / (V(a)*V(a) + ${half})))`,
      "r1 a 0 1e9",
      ".options reltol=1e-9 vntol=1e-15 abstol=1e-15",
      ".op",
    ]);
    const point = operatingPoint({
      ground: "0",
      elements: [
        { kind: "currentSource", id: "i", from: "0", to: "a", amps },
        { kind: "fuse", id: "f", a: "a", b: "0", type: "C", ratedAmps },
      ],
    });
    if (!point.ok) throw new Error(point.error.message);
    expect(point.value.volts("a") / (columns.get("v(a)")?.[0] ?? Number.NaN)).toBeCloseTo(1, 6);
  });
});
