import type { Component } from "../document/component";
import type { VehicleDocument } from "../document/vehicle-document";
import { relayTerminals, terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import { copperLinks } from "../validate/nets";

export interface NetTerminal {
  readonly component: Component;
  readonly terminal: string;
}

/** What copper joins: conductors, mated contacts, splices; body metal parts nets rather than joining them. */
export interface CopperNets {
  /** The net of a node (`A1:T1`, `X2.5:h`, `XS1`, `XE1:ring`). */
  netOf(node: string): string;
  readonly terminals: ReadonlyMap<string, readonly NetTerminal[]>;
  /** Steps through fuses, closed contacts and diodes from a supply; absent when none leads there. */
  readonly fromSupply: ReadonlyMap<string, number>;
  /** Steps from the body likewise. */
  readonly fromGround: ReadonlyMap<string, number>;
}

/** Pairs of terminals that current passes between on its way to a load. */
export function passages(component: Component): (readonly [string, string])[] {
  switch (component.kind) {
    case "fuse":
    case "diode":
      return [["1", "2"]];
    case "switch":
      return Object.values(component.positions).flat();
    case "relay": {
      const { common, make, break: rest } = relayTerminals(component);
      return [[common, make], ...(rest === undefined ? [] : ([[common, rest]] as const))];
    }
    case "module":
      return (component.internalLinks ?? []).map(({ from, to }) => [from, to] as const);
    default:
      return [];
  }
}

export function findCopperNets(document: VehicleDocument, index: VehicleIndex): CopperNets {
  const above = new Map<string, string>();
  const netOf = (node: string): string => {
    let root = node;
    for (let next = above.get(root); next !== undefined; next = above.get(root)) root = next;
    return root;
  };
  const grounded = new Set<string>();
  for (const { a, b } of copperLinks(document, index, { switches: false })) {
    if (b === "body") grounded.add(a);
    else if (a === "body") grounded.add(b);
    else if (netOf(a) !== netOf(b)) above.set(netOf(a), netOf(b));
  }
  const terminals = new Map<string, NetTerminal[]>();
  const steps = new Map<string, Set<string>>();
  const step = (a: string, b: string): void => {
    steps.set(a, (steps.get(a) ?? new Set()).add(b));
  };
  for (const component of document.components) {
    for (const terminal of terminalsOf(component)) {
      const net = netOf(`${component.id}:${terminal}`);
      terminals.set(net, [...(terminals.get(net) ?? []), { component, terminal }]);
    }
    for (const [a, b] of passages(component)) {
      const [one, other] = [netOf(`${component.id}:${a}`), netOf(`${component.id}:${b}`)];
      step(one, other);
      step(other, one);
    }
  }
  const walk = (starts: readonly string[]): Map<string, number> => {
    const found = new Map(starts.map((net) => [net, 0]));
    const queue = [...found.keys()];
    for (let at = queue.shift(); at !== undefined; at = queue.shift())
      for (const next of steps.get(at) ?? [])
        if (!found.has(next)) {
          found.set(next, (found.get(at) ?? 0) + 1);
          queue.push(next);
        }
    return found;
  };
  const batteries = document.components.filter(({ kind }) => kind === "battery");
  return {
    netOf,
    terminals,
    fromSupply: walk(batteries.map(({ id }) => netOf(`${id}:+`))),
    fromGround: walk([...[...grounded].map(netOf), ...batteries.map(({ id }) => netOf(`${id}:-`))]),
  };
}
