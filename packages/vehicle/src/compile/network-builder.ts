import type { CircuitElement } from "@probeworthy/circuit";
import type { Readings } from "../simulation/evaluate";
import { type FaultOverlay, openOhms } from "./fault-overlay";

/** The state of the world that sets element values before a settle begins; constant during one settle. */
export interface World {
  readonly ambient: number;
  choice(name: string): string;
  readonly readings: Readings;
  readonly winding: (motor: string) => number;
  readonly charge: (battery: string) => number;
  readonly unplugged: ReadonlySet<string>;
  /** Fuses that do not conduct: blown or out of their holder. */
  readonly openFuses: ReadonlySet<string>;
  /** Fuses and relays out of their holder. */
  readonly pulled: ReadonlySet<string>;
}

/** Writes element values; equal values cost nothing. */
export interface ElementSetter {
  ohms(id: string, value: number): void;
  volts(id: string, value: number): void;
  amps(id: string, value: number): void;
  gain(id: string, value: number): void;
  quiescent(id: string, amps: number): void;
  /** Any other field of an element, by its name in the circuit package. */
  field(id: string, name: string, value: number | boolean): void;
}

/** What a regulator is set to when it shall supply nothing: the circuit asks for a figure above zero. */
export const idleVolts = 1e-4;

export type WorldUpdate = (world: World, set: ElementSetter) => void;

/**
 * Gathers the elements of a network and the rules that set their values. Elements start with the figures of the faultless
 * document, and everything a fault or a state changes is written by a rule, so that vehicles that differ in values only
 * share one prepared circuit.
 */
export class NetworkBuilder {
  readonly elements: CircuitElement[] = [];
  readonly updates: WorldUpdate[] = [];
  readonly nodes = new Set<string>(["body"]);
  private readonly faultElements: string[] = [];

  constructor(readonly overlay: FaultOverlay) {}

  /** Ohms that faults add at a place, as the world stands; a constant 0 when there is none. */
  fault(place: string): (world: World) => number {
    const steady = this.overlay.series.get(place) ?? 0;
    const now = this.overlay.intermittent.get(place);
    if (!now) return () => steady;
    return (world) => now.reduce((sum, { ohms, holds }) => (holds(world) ? sum + ohms : sum), steady);
  }

  private isFaulty(place: string): boolean {
    return this.overlay.series.has(place) || this.overlay.intermittent.has(place);
  }

  node(name: string): string {
    this.nodes.add(name);
    return name;
  }

  add(element: CircuitElement): void {
    this.elements.push(element);
  }

  resistor(id: string, a: string, b: string, ohms: number): void {
    this.add({ kind: "resistor", id, a: this.node(a), b: this.node(b), ohms: Math.min(openOhms, ohms) });
  }

  /** A resistor that a fault has put in. It shapes the topology; its value is written like any other. */
  faultResistor(id: string, a: string, b: string, ohms: number | ((world: World) => number)): void {
    this.shape(`${id} ${a} ${b}`);
    this.resistor(id, a, b, 1);
    this.update((world, set) =>
      set.ohms(id, Math.min(openOhms, typeof ohms === "number" ? ohms : ohms(world))),
    );
  }

  /** Says that a fault has changed the network other than by values that are written: it needs a circuit of its own. */
  shape(text: string): void {
    this.faultElements.push(text);
  }

  /** What tells this network's topology from that of the same document without faults. */
  get topology(): string {
    return this.faultElements.join(";");
  }

  /** The node inside a component behind one of its terminals: apart from the terminal only where a fault lies between. */
  inside(component: string, terminal: string): string {
    return this.behind(`${component}:${terminal}`, `${component}:${terminal}`);
  }

  /** The node behind a place of a component (a filament, a terminal): apart from `node` only where a fault lies between. */
  behind(place: string, node: string): string {
    if (!this.isFaulty(place)) return this.node(node);
    const inner = `${place}#inside`;
    if (!this.nodes.has(inner)) this.faultResistor(`${place}#fault`, node, inner, this.fault(place));
    return this.node(inner);
  }

  /**
   * A load of constant current that folds away below about 1 V: the quiescent path of a regulator that regulates
   * nothing, I·tanh(v / 1 V). Its current is changed with `set.quiescent`.
   */
  load(id: string, plus: string, minus: string, amps: number): void {
    this.add({
      kind: "regulator",
      id,
      input: this.node(plus),
      output: this.node(`${id}#none`),
      reference: this.node(minus),
      volts: idleVolts,
      limitAmps: 1e-6,
      quiescentAmps: amps,
    });
  }

  update(rule: WorldUpdate): void {
    this.updates.push(rule);
  }
}
