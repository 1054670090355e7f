import { transient } from "@probeworthy/circuit";
import { beforeAll, describe, expect, it } from "vitest";
import { type NgspiceEngine, startEngine } from "./ngspice-engine";
import { runTransientDeck } from "./ngspice-waveforms";
import { type Compared, type TransientCase, transientCases } from "./transient-cases";

// Waveforms against ngspice 45 (package eecircuit-engine), each from a deck written by hand.

/** Of the largest value of the waveform; both sides are run far tighter. */
const tolerance = 1e-4;

let engine: NgspiceEngine;
beforeAll(async () => {
  engine = await startEngine();
});

/** Evenly spread, and off every edge that a case could have. */
const timesOf = (untilSeconds: number) =>
  Array.from({ length: 500 }, (_, i) => (untilSeconds * (i + 0.3719)) / 500);

const tight = { relativeTolerance: 1e-7, voltTolerance: 1e-8, ampTolerance: 1e-9, internalTolerance: 1 };

function runOurs({ network, run, compared }: TransientCase, at: readonly number[]) {
  const record = {
    volts: compared.flatMap((signal) => ("volts" in signal ? [signal.volts] : [])),
    amps: compared.flatMap((signal) => ("amps" in signal ? [signal.amps] : [])),
    quantities: compared.flatMap((signal) =>
      "quantity" in signal ? [{ element: signal.quantity[0], name: signal.quantity[1] }] : [],
    ),
  };
  const result = transient(network, { ...run, ...tight, at, record });
  if (!result.ok) throw new Error(result.error.message);
  const waveforms = result.value;
  return (signal: Compared): ArrayLike<number> => {
    if ("volts" in signal) return waveforms.volts(signal.volts);
    if ("amps" in signal) return waveforms.amps(signal.amps);
    return waveforms.quantity(...signal.quantity);
  };
}

describe("waveforms agree with ngspice", () => {
  it.each(transientCases)("%s", async (_name, experiment) => {
    const { deck, run, compared, maxStepSeconds } = experiment;
    const times = timesOf(run.untilSeconds);
    const theirs = await runTransientDeck(engine, {
      lines: deck,
      untilSeconds: run.untilSeconds,
      isFromRest: run.start === "rest",
      ...(maxStepSeconds === undefined ? {} : { maxStepSeconds }),
    });
    const ours = runOurs(experiment, times);
    for (const signal of compared) {
      const expected = theirs.samplesAt(signal.theirs, times);
      const actual = ours(signal);
      const scale = Math.max(...expected.map(Math.abs));
      // In the very step in which it jumps ngspice has no value.
      const changes = theirs.changesAt(signal.theirs, times);
      const kept = times.flatMap((_, i) => ((changes[i] ?? 0) < 0.2 * scale ? [i] : []));
      expect(kept.length).toBeGreaterThan(times.length - 3);
      const worst = Math.max(...kept.map((i) => Math.abs((actual[i] ?? Number.NaN) - (expected[i] ?? 0))));
      expect(scale).toBeGreaterThan(1e-6);
      expect(worst / scale, signal.theirs).toBeLessThan(tolerance);
    }
  });
});
