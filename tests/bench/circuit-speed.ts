import { type NgspiceEngine, startEngine } from "../reference/circuit/ngspice-engine";
import { writeDeck, writeNetlist } from "../reference/circuit/ngspice-netlist";
import { type Alteration, alterAndSolve, alterations, altered, op150, prepared } from "./circuit-alterations";
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

const count = 1000;
/**
 * All take part in every turn, one after the other, and it is CPU time that counts: so a busy machine slows them alike,
 * and the ratio is of one turn.
 */
const turns = 5;
/** Whose volts are read after every solve. */
const node = "n100";

/**
 * 1000 altered values on 150 nodes, each to a solved operating point. ngspice in WebAssembly is given both ways its
 * interface has: a deck for every value (what an interactive use has to do), and all values of a turn known beforehand,
 * written as `alter` and `op` into one deck. The speed-up is over the better of them. Native ngspice runs the second
 * way, without the time it takes to start.
 */
export async function circuitSpeedBench(): Promise<Measurement[]> {
  const all = alterations(op150, count);
  const engine = await startEngine();
  const loop = ngspiceLoop(op150);
  await compareAnswers(engine, loop, all);

  const circuit = prepared(op150);
  const through = (changes: readonly Alteration[]) => {
    for (const change of changes) alterAndSolve(circuit, change);
  };
  // Until the compiler has done its work, on either side: it takes some 30 000 solves of ours.
  for (let round = 0; round < 40; round++) through(all);
  await timeDecks(engine, all, 0, 50);
  await timeLoop(engine, loop, all.slice(0, 200));
  const seconds = {
    ours: [] as number[],
    deck: [] as number[],
    wasm: [] as number[],
    native: [] as number[],
  };
  const each = count / turns;
  for (let turn = 0; turn < turns; turn++) {
    const changes = all.slice(turn * each, (turn + 1) * each);
    seconds.ours.push(timeOurs(() => through(changes)) / each);
    seconds.deck.push((await timeDecks(engine, all, turn * each, each)) / each);
    seconds.wasm.push((await timeLoop(engine, loop, changes)) / each);
    if (hasNativeNgspice) seconds.native.push(timeNative(loop, all));
  }
  const ratio = (theirs: readonly number[]) =>
    median(theirs.map((value, turn) => value / (seconds.ours[turn] ?? Number.NaN)));
  const best = seconds.deck.map((value, turn) => Math.min(value, seconds.wasm[turn] ?? value));
  const microseconds = (name: string, values: readonly number[]) => ({
    name: `circuit.op150.${name}`,
    value: median(values) * 1e6,
    unit: "us",
  });
  if (!hasNativeNgspice) process.stderr.write("No native ngspice here: its row is left out.\n");
  return [
    microseconds("altered", seconds.ours),
    microseconds("ngspice_wasm_decks", seconds.deck),
    microseconds("ngspice_wasm_loop", seconds.wasm),
    ...(hasNativeNgspice ? [microseconds("ngspice_native", seconds.native)] : []),
    { name: "circuit.op150.speedup_vs_ngspice_wasm_decks", value: ratio(seconds.deck), unit: "x" },
    { name: "circuit.op150.speedup_vs_ngspice_wasm", value: ratio(best), unit: "x" },
    ...(hasNativeNgspice
      ? [{ name: "circuit.op150.speedup_vs_ngspice_native", value: ratio(seconds.native), unit: "x" }]
      : []),
  ];
}

/** Ours is over within milliseconds: the median of several rounds through the same values. */
function timeOurs(round: () => void): number {
  return median(Array.from({ length: 9 }, () => cpuSeconds(round)));
}

/** setNetList and runSim for each value; the deck is written before the clock starts. */
async function timeDecks(
  engine: NgspiceEngine,
  all: readonly Alteration[],
  from: number,
  each: number,
): Promise<number> {
  let total = 0;
  for (let k = from; k < from + each; k++) {
    const deck = writeDeck(writeNetlist(altered(op150, all.slice(0, k + 1))), usualOptions);
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
  const deck = loopDeck(loop, changes, usualOptions, node);
  return cpuSecondsOf(async () => {
    const { printed } = await engine.run(deck);
    readPrinted(printed, changes.length);
  });
}

/** Seconds of one value: a run over all less a run over a tenth of them. */
function timeNative(loop: NgspiceLoop, changes: readonly Alteration[]): number {
  const few = changes.slice(0, changes.length / 10);
  const run = (some: readonly Alteration[]) => {
    const native = runNativeNgspice(loopDeck(loop, some, usualOptions, node, ["quit"]));
    readPrinted(native.printed, some.length);
    return native.cpuSeconds;
  };
  const long = run(changes);
  return (long - run(few)) / (changes.length - few.length);
}

/** What is timed must be the same work: all three give the same volts after the same alterations. */
async function compareAnswers(
  engine: NgspiceEngine,
  loop: NgspiceLoop,
  all: readonly Alteration[],
): Promise<void> {
  const some = all.slice(0, 200);
  const circuit = prepared(op150);
  const ours = some.map((change) => alterAndSolve(circuit, change).volts(node));
  const compare = (who: string, printed: string) => {
    for (const [k, volts] of readPrinted(printed, some.length).entries()) {
      const mine = ours[k] ?? Number.NaN;
      if (!(Math.abs(volts - mine) <= 1e-6 * Math.abs(mine)))
        throw new Error(`After ${k + 1} alterations ${who} has ${volts} V at ${node}, we have ${mine}.`);
    }
  };
  const wasm = await engine.run(loopDeck(loop, some, tightOptions, node));
  compare("ngspice in WebAssembly", wasm.printed);
  if (!hasNativeNgspice) return;
  compare("native ngspice", runNativeNgspice(loopDeck(loop, some, tightOptions, node, ["quit"])).printed);
}
