import type { Network } from "@probeworthy/circuit";
import { writeCard } from "./ngspice-cards";

/** A network as lines of an ngspice deck, with the names under which ngspice will report its nodes and currents. */
export interface Netlist {
  readonly lines: readonly string[];
  /** ngspice's vector ("0" for ground) by our node name. */
  readonly voltNames: ReadonlyMap<string, string>;
  /** ngspice's vector by our element id. */
  readonly ampNames: ReadonlyMap<string, string>;
}

/** `leaks` names nodes that get 1e12 Ω to ground, the leak our package gives a floating node. */
export function writeNetlist(network: Network, leaks: readonly string[] = []): Netlist {
  const nodes = new Map<string, string>([[network.ground, "0"]]);
  const node = (name: string | undefined): string => {
    if (name === undefined) throw new Error("A control node is missing.");
    const known = nodes.get(name);
    if (known !== undefined) return known;
    const made = `n${nodes.size}`;
    nodes.set(name, made);
    return made;
  };
  const found = new Map(network.elements.map((element, i) => [element.id, { element, i }]));
  const find = (id: string) => {
    const one = found.get(id);
    if (one === undefined) throw new Error(`There is no element "${id}".`);
    return one;
  };
  const sensed = new Set(
    network.elements.map((e) => (e.kind === "controlledSource" ? e.controlElement : undefined)),
  );
  const ampNames = new Map<string, string>();
  const lines = network.elements.flatMap((element, i) => {
    const card = writeCard(element, { i, node, find, isSensed: sensed.has(element.id) });
    if (card.amps !== undefined) ampNames.set(element.id, card.amps);
    return card.lines;
  });
  leaks.forEach((name, i) => {
    lines.push(`rleak${i} ${node(name)} 0 1e12`);
  });
  const voltNames = new Map(
    [...nodes].map(([ours, theirs]) => [ours, theirs === "0" ? "0" : `v(${theirs})`]),
  );
  return { lines, voltNames, ampNames };
}

/** ngspice's own leak is ours; iteration limits high enough that none of them decides. */
const setting = "gmin=1e-12 itl1=1000 itl6=1000 temp=27 tnom=27";

/** All lines of a deck. `rest` asks for an analysis, and for whatever else it needs. */
export const writeDeck = (
  netlist: Netlist,
  options: string,
  rest: readonly string[] = [".op"],
): readonly string[] => [...netlist.lines, `.options ${options} ${setting}`, ...rest];
