import type { Network } from "@probeworthy/circuit";
import { type Netlist, writeDeck, writeNetlist } from "../reference/circuit/ngspice-netlist";
import type { Alteration } from "./circuit-alterations";

/** A deck that solves one network again and again with other numbers, inside one run of ngspice. */
export interface NgspiceLoop {
  readonly netlist: Netlist;
  readonly network: Network;
}

export const ngspiceLoop = (network: Network): NgspiceLoop => ({ network, netlist: writeNetlist(network) });

/** Tolerances with which ngspice keeps to the relative error of 1e-6 that the bench holds us to. */
export const usualOptions = "reltol=1e-6 vntol=1e-9 abstol=1e-12";
/** To compare answers with. */
export const tightOptions = "reltol=1e-8 abstol=1e-14 vntol=1e-11";

/** How a loop goes about it. */
export interface LoopStyle {
  readonly options: string;
  /** The node whose volts are printed of every operating point; all of them when left out. */
  readonly node?: string;
  /**
   * False throws every operating point away once it is printed. By itself ngspice keeps them all, and the more it keeps
   * the slower it becomes.
   */
  readonly keepsAll: boolean;
  /** Commands at the end. */
  readonly last?: readonly string[];
}

/** Lines of a deck that makes the changes one after the other and solves after each. */
export function loopDeck(
  { netlist, network }: NgspiceLoop,
  changes: readonly Alteration[],
  { options, node, keepsAll, last = [] }: LoopStyle,
): readonly string[] {
  const vector = node === undefined ? "all" : netlist.voltNames.get(node);
  if (vector === undefined) throw new Error(`There is no node "${node}".`);
  const numbers = new Map(network.elements.map((element, i) => [element.id, i]));
  const commands = changes.flatMap(({ element, change }) => {
    const i = numbers.get(element);
    const alter = "ohms" in change ? `alter r${i} = ${change.ohms}` : `alter v${i} = ${change.volts}`;
    return [alter, "op", `print ${vector}`, ...(keepsAll ? [] : ["destroy"])];
  });
  const control = [".control", "set numdgt=15", ...commands, ...last, ".endc"];
  return writeDeck(netlist, options, [".op", ...control]);
}

/** The printed volts, one for each alteration. */
export function readPrinted(printed: string, expected: number): readonly number[] {
  const values = [...printed.matchAll(/^(?:ngspice \d+ -> )?v\(\w+\) = (\S+)/gm)].map(([, value]) =>
    Number(value),
  );
  if (values.length !== expected)
    throw new Error(`ngspice printed ${values.length} of ${expected} voltages: ${printed.slice(-500)}`);
  return values;
}
