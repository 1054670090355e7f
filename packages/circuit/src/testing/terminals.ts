import type { OperatingPoint } from "../circuit";
import type { CircuitElement, NodeName } from "../network";
import { terminalFields } from "../sample-elements";

export interface Terminal {
  readonly field: string;
  readonly node: NodeName;
}

/** Where an element hangs, by the names of the fields that say so, in the order in which its kind lists them. */
export function terminalsOf(element: CircuitElement): readonly Terminal[] {
  const fields = element as unknown as Readonly<Record<string, unknown>>;
  return terminalFields(element.kind).flatMap((field) => {
    const node = fields[field];
    return typeof node === "string" ? [{ field, node }] : [];
  });
}

/** The same element with some of its fields changed, terminals among them. */
export const changed = (element: CircuitElement, fields: object): CircuitElement =>
  ({ ...element, ...fields }) as CircuitElement;

/** Kinds that may deliver power; every other one is held to be passive, so that a new kind has to be. */
const delivering = new Set(["voltageSource", "currentSource", "controlledSource", "battery", "alternator"]);
export const mayDeliver = (element: CircuitElement): boolean =>
  delivering.has(element.kind) || (element.kind === "curve" && element.active === true);

export const probeIdOf = (id: string, field: string): string => `${id}?${field}`;

/**
 * An ammeter without resistance in every lead of every element: a source of 0 V between the node and the terminal. The
 * network stays what it was, and says what flows into each terminal without asking the element.
 */
export const withProbes = (elements: readonly CircuitElement[]): readonly CircuitElement[] =>
  elements.flatMap((element) => {
    const terminals = terminalsOf(element);
    const inner = Object.fromEntries(terminals.map(({ field }) => [field, probeIdOf(element.id, field)]));
    return [
      changed(element, inner),
      ...terminals.map(
        ({ field, node }): CircuitElement => ({
          kind: "voltageSource",
          id: probeIdOf(element.id, field),
          positive: node,
          negative: probeIdOf(element.id, field),
          volts: 0,
        }),
      ),
    ];
  });

/** Amps into each terminal of an element of a network with probes. */
export const ampsInto = (element: CircuitElement, point: OperatingPoint): readonly number[] =>
  terminalsOf(element).map(({ field }) => point.amps(probeIdOf(element.id, field)));
