import type { CircuitElement } from "@probeworthy/circuit";
import { diodeCard } from "./ngspice-diode-cards";
import {
  controlledSourceCard,
  currentSourceCard,
  resistorCard,
  switchCard,
  voltageSourceCard,
} from "./ngspice-linear-cards";
import { filamentCard } from "./ngspice-load-cards";
import { regulatorCard } from "./ngspice-regulator-cards";

/** One element as lines of an ngspice deck. */
export interface Card {
  readonly lines: readonly string[];
  /** Name under which ngspice reports the current into the element's first terminal, where it does. */
  readonly amps?: string;
}

/** What a card needs to know of the deck around it. */
export interface Place {
  /** Number of the element: makes its names unique. */
  readonly i: number;
  /** ngspice's name of a node. */
  node(name: string | undefined): string;
  /** Another element and its number. */
  find(id: string): { readonly element: CircuitElement; readonly i: number };
  /** Whether a controlled source reads this element's current: unless a resistor, it needs a voltage source `v${i}`. */
  readonly isSensed: boolean;
}

export type WriteCard<Kind extends CircuitElement["kind"]> = (
  element: CircuitElement & { kind: Kind },
  place: Place,
) => Card;

/** A new kind of element is one line here and one function that says the same in ngspice's language. */
const cards: { readonly [Kind in CircuitElement["kind"]]?: WriteCard<Kind> } = {
  resistor: resistorCard,
  voltageSource: voltageSourceCard,
  currentSource: currentSourceCard,
  switch: switchCard,
  controlledSource: controlledSourceCard,
  diode: diodeCard,
  filament: filamentCard,
  regulator: regulatorCard,
};

export function writeCard(element: CircuitElement, place: Place): Card {
  const write = cards[element.kind] as ((element: CircuitElement, place: Place) => Card) | undefined;
  if (write === undefined) throw new Error(`No ngspice card is written for a ${element.kind}.`);
  return write(element, place);
}
