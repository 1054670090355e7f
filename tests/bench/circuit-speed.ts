import { type NgspiceEngine, startEngine } from "../reference/circuit/ngspice-engine";
import { writeDeck, writeNetlist } from "../reference/circuit/ngspice-netlist";
import {
  type Alteration,
  alterAndSolve,
  alterations,
  altered,
  harness,
  prepared,
} from "./circuit-alterations";
import { cpuSeconds, cpuSecondsOf, median } from "./cpu";
import type { Measurement } from "./measurement";
import {
  loopDeck,
  type NgspiceLoop,
  ngspiceLoop,
  readPrinted,
  tightOptions,
  usualOptions,
} from "./ngspice-loop";
import { hasNativeNgspice, runNativeNgspice } from "./ngspice-native";

/** Five harnesses of 150 nodes and 30 diodes, 200 altered values each. */
const seeds = [150, 151, 152, 153, 154];
const each = 200;
/** Whose volts are compared. */
const node = "n100";

interface Race {
  readonly ours: number;
  readonly decks: number;
  readonly loop: number;
  readonly native: number | undefined;
  readonly tidyNative: number | undefined;
}

/**
 * 1000 altered values, each to a solved operating point. ngspice in WebAssembly is called as its package is meant to be,
 * with a deck for every value (nothing else can answer while somebody works with the network); beside it stands the
 * way in which all values of a run are known beforehand and written as `alter` and `op` into one deck. Native ngspice runs
 * that way twice, without the time it takes to start: as it comes, and with every operating point thrown away once it is
 * printed, without which it slows down. Every operating point is delivered as a whole. All take part in every turn, one
 * harness a turn, and it is CPU time that counts: so a busy machine slows them alike.
 */
export async function circuitSpeedBench(): Promise<Measurement[]> {
  const engine = await startEngine();
  const races: Race[] = [];
  for (const seed of seeds) races.push(await race(engine, seed));
  if (!hasNativeNgspice) process.stderr.write("No native ngspice here: its rows are left out.\n");

  const theirs = {
    ngspice_wasm: races.map(({ decks }) => decks),
    ngspice_wasm_loop: races.map(({ loop }) => loop),
    ngspice_native: races.flatMap(({ native }) => native ?? []),
    ngspice_native_tidy: races.flatMap(({ tidyNative }) => tidyNative ?? []),
  };
  const total = (seconds: readonly number[]) => seconds.reduce((sum, value) => sum + value, 0);
  const ours = total(races.map((turn) => turn.ours));
  const rivals = Object.entries(theirs).filter(([, seconds]) => seconds.length === races.length);
  const microseconds = (name: string, seconds: number) => ({
    name: `circuit.op150.${name}`,
    value: (seconds / races.length) * 1e6,
    unit: "us",
  });
  return [
    microseconds("altered", ours),
    ...rivals.map(([name, seconds]) => microseconds(name, total(seconds))),
    ...rivals.map(([name, seconds]) => ({
      name: `circuit.op150.speedup_vs_${name}`,
      value: total(seconds) / ours,
      unit: "x",
    })),
  ];
}

/** Seconds of one altered value of one harness. */
async function race(engine: NgspiceEngine, seed: number): Promise<Race> {
  const network = harness(150, seed);
  const changes = alterations(network, each);
  const loop = ngspiceLoop(network);
  await compareAnswers(engine, loop, changes);

  const circuit = prepared(network);
  const through = () => {
    for (const change of changes) alterAndSolve(circuit, change);
  };
  // Until the compiler has done its work: it takes some 30 000 solves of ours.
  for (let round = 0; round < 150; round++) through();
  return {
    ours: median(Array.from({ length: 15 }, () => cpuSeconds(through))) / each,
    decks: (await timeDecks(engine, loop, changes)) / each,
    loop: (await timeLoop(engine, loop, changes)) / each,
    native: hasNativeNgspice ? timeNative(loop, changes) : undefined,
    tidyNative: hasNativeNgspice ? timeTidyNative(loop, changes) : undefined,
  };
}

/** setNetList and runSim for each value; the deck is written before the clock starts. */
async function timeDecks(
  engine: NgspiceEngine,
  { network }: NgspiceLoop,
  changes: readonly Alteration[],
): Promise<number> {
  let total = 0;
  for (const k of changes.keys()) {
    const deck = writeDeck(writeNetlist(altered(network, changes.slice(0, k + 1))), usualOptions);
    total += await cpuSecondsOf(async () => {
      const { columns } = await engine.run(deck);
      if (columns.size === 0) throw new Error("ngspice found no operating point.");
    });
  }
  return total;
}

async function timeLoop(
  engine: NgspiceEngine,
  loop: NgspiceLoop,
  changes: readonly Alteration[],
): Promise<number> {
  const deck = loopDeck(loop, changes, { options: usualOptions, keepsAll: false });
  return cpuSecondsOf(async () => {
    const { printed } = await engine.run(deck);
    if (printed.length === 0) throw new Error("ngspice printed no operating point.");
  });
}

/** Seconds of one value in a plain loop: one through all values less one through a tenth of them. */
function timeNative(loop: NgspiceLoop, changes: readonly Alteration[]): number {
  const few = changes.slice(0, changes.length / 10);
  return (runNative(loop, changes, true) - runNative(loop, few, true)) / (changes.length - few.length);
}

/** The same with nothing kept: several times through all values less once, for one time is over too soon. */
function timeTidyNative(loop: NgspiceLoop, changes: readonly Alteration[]): number {
  const rounds = 6;
  const many = Array.from({ length: rounds }, () => changes).flat();
  const seconds = runNative(loop, many, false) - runNative(loop, changes, false);
  return seconds / ((rounds - 1) * changes.length);
}

function runNative(loop: NgspiceLoop, changes: readonly Alteration[], keepsAll: boolean): number {
  const style = { options: usualOptions, keepsAll, last: ["quit"] };
  const { printed, cpuSeconds: used } = runNativeNgspice(loopDeck(loop, changes, style));
  if (printed.length < changes.length) throw new Error("ngspice printed no operating points.");
  return used;
}

/** What is timed must be the same work: all three give the same volts after the same alterations. */
async function compareAnswers(
  engine: NgspiceEngine,
  loop: NgspiceLoop,
  changes: readonly Alteration[],
): Promise<void> {
  const circuit = prepared(loop.network);
  const ours = changes.map((change) => alterAndSolve(circuit, change).volts(node));
  const compare = (who: string, printed: string) => {
    for (const [k, volts] of readPrinted(printed, changes.length).entries()) {
      const mine = ours[k] ?? Number.NaN;
      if (!(Math.abs(volts - mine) <= 1e-6 * Math.abs(mine)))
        throw new Error(`After ${k + 1} alterations ${who} has ${volts} V at ${node}, we have ${mine}.`);
    }
  };
  const style = { options: tightOptions, node, keepsAll: false };
  const wasm = await engine.run(loopDeck(loop, changes, style));
  compare("ngspice in WebAssembly", wasm.printed);
  if (!hasNativeNgspice) return;
  compare("native ngspice", runNativeNgspice(loopDeck(loop, changes, { ...style, last: ["quit"] })).printed);
}
