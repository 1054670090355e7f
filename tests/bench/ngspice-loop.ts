import type { Network } from "@probeworthy/circuit";
import { type Netlist, writeDeck, writeNetlist } from "../reference/circuit/ngspice-netlist";
import type { Alteration } from "./circuit-alterations";

/** A deck that solves one network again and again with other numbers, inside one run of ngspice. */
export interface NgspiceLoop {
  readonly netlist: Netlist;
  readonly network: Network;
}

export const ngspiceLoop = (network: Network): NgspiceLoop => ({ network, netlist: writeNetlist(network) });

/** With ngspice's own tolerances, as anyone who calls it would. */
export const usualOptions = "reltol=1e-3";
/** To compare answers with. */
export const tightOptions = "reltol=1e-8 abstol=1e-14 vntol=1e-11";

/**
 * Lines of the deck. Every operating point says the volts of one node and is then thrown away: kept ones make ngspice
 * three times slower.
 */
export function loopDeck(
  { netlist, network }: NgspiceLoop,
  changes: readonly Alteration[],
  options: string,
  node: string,
  last: readonly string[] = [],
): readonly string[] {
  const vector = netlist.voltNames.get(node);
  if (vector === undefined) throw new Error(`There is no node "${node}".`);
  const numbers = new Map(network.elements.map((element, i) => [element.id, i]));
  const commands = changes.flatMap(({ element, change }) => {
    const i = numbers.get(element);
    const alter = "ohms" in change ? `alter r${i} = ${change.ohms}` : `alter v${i} = ${change.volts}`;
    return [alter, "op", `print ${vector}`, "destroy"];
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
