import type { Component } from "../document/component";
import type { VehicleDocument } from "../document/vehicle-document";
import { terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import { type CopperNets, type NetTerminal, passages } from "./copper-nets";
import { outputTerminals, readTerminals, vitalTerminals } from "./module-needs";

/** Keys of expressions and of modules whose text is another component. */
const namesComponent = new Set(["of", "loadAmps", "speedOf", "torqueOf", "pulledIn", "motor"]);

/** Components an own law or a received message speaks of. */
export function namedComponents(value: unknown, key = ""): string[] {
  if (typeof value === "string") return namesComponent.has(key) ? [value] : [];
  if (typeof value !== "object" || value === null) return [];
  if (Array.isArray(value)) {
    const senders =
      key === "receives" ? (value as { from: string }[]).map(({ from }) => from) : ([] as string[]);
    return [...senders, ...value.flatMap((part) => namedComponents(part))];
  }
  return Object.entries(value).flatMap(([name, part]) => namedComponents(part, name));
}

/**
 * The components that `primary` ones need to work as in the whole vehicle, each with its terminals that must stay wired: the
 * sources, what lies between them and a load, what else stands on a signal's wire, the senders of messages.
 */
export class NeededParts {
  readonly live = new Map<string, Set<string>>();
  private readonly waiting: NetTerminal[] = [];
  private readonly signalNets = new Set<string>();

  constructor(
    private readonly nets: CopperNets,
    private readonly index: VehicleIndex,
    private readonly primary: ReadonlySet<string>,
    document: VehicleDocument,
  ) {
    for (const component of document.components)
      if (primary.has(component.id) || component.kind === "battery" || component.kind === "chargingSource")
        this.need(component, terminalsOf(component));
    this.run();
  }

  /** Adds everything on the net of a terminal: a part of its own may not hang in the air. */
  addNet(node: string): void {
    for (const { component, terminal } of this.nets.terminals.get(this.nets.netOf(node)) ?? [])
      this.need(component, [terminal]);
    this.run();
  }

  private run(): void {
    for (let next = this.waiting.pop(); next !== undefined; next = this.waiting.pop()) this.spread(next);
  }

  private need(component: Component, terminals: readonly string[]): void {
    const isNew = !this.live.has(component.id);
    const live = this.live.get(component.id) ?? new Set<string>();
    this.live.set(component.id, live);
    const add = (names: Iterable<string>): void => {
      for (const terminal of names) {
        if (live.has(terminal)) continue;
        live.add(terminal);
        this.waiting.push({ component, terminal });
      }
    };
    add(terminals);
    if (component.kind === "module") {
      if (isNew) add(vitalTerminals(component));
      // What it drives may have grown; what it must see grows with it.
      add(readTerminals(component, live));
    } else if (component.kind !== "switch" && component.kind !== "passive") add(terminalsOf(component));
    if (!isNew) return;
    for (const id of namedComponents(component)) {
      const named = this.index.components.get(id);
      if (named !== undefined) this.need(named, named.kind === "module" ? [] : terminalsOf(named));
    }
  }

  private spread({ component, terminal }: NetTerminal): void {
    const net = this.nets.netOf(`${component.id}:${terminal}`);
    const isSupply = this.nets.fromSupply.has(net);
    const isGround = this.nets.fromGround.get(net) === 0;
    for (const other of this.nets.terminals.get(net) ?? []) {
      if (other.component.id === component.id) continue;
      this.follow(other, net);
      if (isGround || other.component.kind === "passive") continue;
      if (!isSupply && !this.isBareInput(other)) this.need(other.component, [other.terminal]);
      // An input on a switched wire of the system loads it, if little.
      if (this.primary.has(component.id) && this.isBareInput(other))
        this.need(other.component, [other.terminal]);
    }
    this.signalNets.add(net);
  }

  /** What leads from a net towards the battery or the body belongs to it. */
  private follow({ component, terminal }: NetTerminal, net: string): void {
    for (const [a, b] of passages(component)) {
      const far = a === terminal ? b : b === terminal ? a : undefined;
      if (far === undefined) continue;
      const other = this.nets.netOf(`${component.id}:${far}`);
      const nearer = (steps: ReadonlyMap<string, number>): boolean => {
        const [here, there] = [steps.get(net), steps.get(other)];
        return here !== undefined && there !== undefined && there < here;
      };
      if (nearer(this.nets.fromSupply) || nearer(this.nets.fromGround)) this.need(component, [terminal, far]);
    }
    if (component.kind !== "module") return;
    const drives = component.outputs?.some((output) =>
      outputTerminals(output).some((name) => name === terminal && !isFeed(output, name)),
    );
    if (drives || component.rails?.some((rail) => rail.terminal === terminal))
      this.need(component, [terminal]);
  }

  private isBareInput({ component, terminal }: NetTerminal): boolean {
    return (
      component.kind === "module" && component.inputs?.some((input) => input.terminal === terminal) === true
    );
  }
}

const isFeed = (output: object, terminal: string): boolean =>
  ["feed", "return", "through"].some((key) => (output as Record<string, unknown>)[key] === terminal);
