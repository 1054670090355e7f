import type { CircuitElement } from "@probeworthy/circuit";
import { diodeCard, ledCard, zenerCard } from "./ngspice-diode-cards";
import {
  capacitorCard,
  controlledSourceCard,
  currentSourceCard,
  inductorCard,
  resistorCard,
  voltageSourceCard,
} from "./ngspice-linear-cards";
import { curveCard, filamentCard, fuseCard, thermistorCard } from "./ngspice-load-cards";
import { alternatorCard, batteryCard, motorCard } from "./ngspice-machine-cards";
import { regulatorCard } from "./ngspice-regulator-cards";
import { comparatorCard, driverCard, relayCard, switchCard } from "./ngspice-switch-cards";

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
  capacitor: capacitorCard,
  inductor: inductorCard,
  voltageSource: voltageSourceCard,
  currentSource: currentSourceCard,
  controlledSource: controlledSourceCard,
  diode: diodeCard,
  led: ledCard,
  zener: zenerCard,
  curve: curveCard,
  thermistor: thermistorCard,
  filament: filamentCard,
  fuse: fuseCard,
  motor: motorCard,
  battery: batteryCard,
  alternator: alternatorCard,
  switch: switchCard,
  relay: relayCard,
  comparator: comparatorCard,
  driver: driverCard,
  regulator: regulatorCard,
};

export function writeCard(element: CircuitElement, place: Place): Card {
  const write = cards[element.kind] as ((element: CircuitElement, place: Place) => Card) | undefined;
  if (write === undefined) throw new Error(`No ngspice card is written for a ${element.kind}.`);
  return write(element, place);
}
