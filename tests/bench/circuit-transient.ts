import { prepareTransient, type Transient, type TransientCircuit } from "@probeworthy/circuit";
import { type NgspiceEngine, startEngine } from "../reference/circuit/ngspice-engine";
import {
  type NgspiceWaveforms,
  readWaveforms,
  runTransientDeck,
} from "../reference/circuit/ngspice-waveforms";
import type { Compared, TransientCase } from "../reference/circuit/transient-cases";
import { motorCases } from "../reference/circuit/transient-motor-cases";
import { relayCases } from "../reference/circuit/transient-relay-cases";
import { cpuSeconds, cpuSecondsOf, median } from "./cpu";
import type { Measurement } from "./measurement";

const relativeTolerance = 1e-4;
const turns = 15;

/**
 * A motor start and a relay release at the same relative tolerance, each engine with its own longest step: a fiftieth of
 * the run in ngspice, which answers at its steps alone, a twentieth in ours, which knows what lies between.
 * ngspice reads its deck again for every run, ours is prepared once; how far each ends up from a run of ngspice with
 * tight tolerances is said beside it, as a fraction of each waveform's largest value. The speed-up is the lesser of two.
 */
export async function circuitTransientBench(): Promise<Measurement[]> {
  const engine = await startEngine();
  const cases = [
    ["motor_start", motorCases["motor of a fan starts"]],
    ["relay_release", withoutContact(relayCases["relay let go, diode across the coil"])],
  ] as const;
  const measured: Measurement[] = [];
  const ratios: number[] = [];
  for (const [name, experiment] of cases) {
    if (experiment === undefined) throw new Error(`There is no case for ${name}.`);
    const { ours, theirs, ratio } = await race(engine, experiment);
    const errors = await errorsOf(engine, experiment);
    ratios.push(ratio);
    measured.push(
      { name: `circuit.transient.${name}`, value: ours * 1e6, unit: "us" },
      { name: `circuit.transient.${name}_ngspice_wasm`, value: theirs * 1e6, unit: "us" },
      { name: `circuit.transient.${name}_error`, value: errors.ours, unit: "1" },
      { name: `circuit.transient.${name}_error_ngspice_wasm`, value: errors.theirs, unit: "1" },
    );
  }
  const speedup = Math.min(...ratios);
  return [...measured, { name: "circuit.transient.speedup_vs_ngspice_wasm", value: speedup, unit: "x" }];
}

/** The contact jumps when the coil's current has fallen far enough: any error of that moment would be one of 100 %. */
const withoutContact = (experiment: TransientCase | undefined): TransientCase | undefined =>
  experiment && {
    ...experiment,
    compared: experiment.compared.filter((signal) => !("volts" in signal && signal.volts === "c")),
  };

async function race(engine: NgspiceEngine, experiment: TransientCase) {
  const circuit = prepared(experiment);
  const deck = usualDeck(experiment);
  // Until the compilers of both have done their work: their threads would count as time spent, whoever's turn it is.
  for (let i = 0; i < 100; i++) await engine.run(deck);
  for (let i = 0; i < 600; i++) follow(circuit, experiment);
  const ours: number[] = [];
  const theirs: number[] = [];
  for (let turn = 0; turn < turns; turn++) {
    theirs.push(
      await cpuSecondsOf(async () => {
        const { columns, complaints } = await engine.run(deck);
        if (!columns.has("time")) throw new Error(`ngspice did not run: ${complaints.join("; ")}`);
      }),
    );
    ours.push(cpuSeconds(() => repeat(10, () => follow(circuit, experiment))) / 10);
  }
  const ratio = median(theirs.map((seconds, turn) => seconds / (ours[turn] ?? Number.NaN)));
  return { ours: median(ours), theirs: median(theirs), ratio };
}

function repeat(times: number, run: () => unknown): void {
  for (let i = 0; i < times; i++) run();
}

function prepared({ network }: TransientCase): TransientCircuit {
  const circuit = prepareTransient(network);
  if (!circuit.ok) throw new Error(circuit.error.message);
  return circuit.value;
}

function follow(circuit: TransientCircuit, { run, compared }: TransientCase): Transient {
  const record = {
    volts: compared.flatMap((signal) => ("volts" in signal ? [signal.volts] : [])),
    amps: compared.flatMap((signal) => ("amps" in signal ? [signal.amps] : [])),
    quantities: compared.flatMap((signal) =>
      "quantity" in signal ? [{ element: signal.quantity[0], name: signal.quantity[1] }] : [],
    ),
  };
  const result = circuit.run({ ...run, relativeTolerance, record });
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** The deck with ngspice's usual settings and our relative tolerance. */
function usualDeck({ deck, run }: TransientCase): readonly string[] {
  const { untilSeconds, start } = run;
  const tran = `.tran ${untilSeconds / 50} ${untilSeconds}${start === "rest" ? " uic" : ""}`;
  return [...deck, `.options reltol=${relativeTolerance}`, tran];
}

/** Largest distance of both from ngspice with tight tolerances, each at the times of its own steps. */
async function errorsOf(engine: NgspiceEngine, experiment: TransientCase) {
  const { deck, run, compared, maxStepSeconds = run.untilSeconds / 50_000 } = experiment;
  const { untilSeconds } = run;
  const isFromRest = run.start === "rest";
  const exact = await runTransientDeck(engine, { lines: deck, untilSeconds, maxStepSeconds, isFromRest });
  const theirs = readWaveforms((await engine.run(usualDeck(experiment))).columns);
  const ours = follow(prepared(experiment), experiment);
  const worst = { ours: 0, theirs: 0 };
  for (const signal of compared) {
    const ourSamples = readSignal(ours, signal);
    const theirSamples = theirs.samplesAt(signal.theirs, theirs.seconds);
    worst.ours = Math.max(worst.ours, distance(exact, signal, [...ours.seconds], ourSamples));
    worst.theirs = Math.max(worst.theirs, distance(exact, signal, theirs.seconds, theirSamples));
  }
  return worst;
}

/** As a part of the waveform's largest value. Samples in the very step in which it jumps do not count. */
function distance(
  exact: NgspiceWaveforms,
  { theirs }: Compared,
  seconds: readonly number[],
  samples: ArrayLike<number>,
): number {
  const first = exact.seconds[0] ?? 0;
  const last = exact.seconds.at(-1) ?? 0;
  const times = seconds.map((t) => Math.min(last, Math.max(first, t)));
  const expected = exact.samplesAt(theirs, times);
  const changes = exact.changesAt(theirs, times);
  const scale = Math.max(...exact.samplesAt(theirs, exact.seconds).map(Math.abs));
  let worst = 0;
  for (const [i, value] of expected.entries()) {
    if ((changes[i] ?? 0) > 0.2 * scale) continue;
    worst = Math.max(worst, Math.abs((samples[i] ?? Number.NaN) - value) / scale);
  }
  return worst;
}

function readSignal(waveforms: Transient, signal: Compared): Float64Array {
  if ("volts" in signal) return waveforms.volts(signal.volts);
  if ("amps" in signal) return waveforms.amps(signal.amps);
  return waveforms.quantity(...signal.quantity);
}
