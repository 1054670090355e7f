import type { CircuitElement } from "../network";
import { alternatorDefinition as alternator } from "./alternator";
import { batteryDefinition as battery } from "./battery";
import { comparatorDefinition as comparator } from "./comparator";
import type { ElementDefinition } from "./definition";
import { driverDefinition as driver } from "./driver";
import { fuseDefinition as fuse } from "./fuse";
import { ledDefinition as led } from "./led";
import { motorDefinition as motor } from "./motor";
import { primitives } from "./primitives";
import { relayDefinition as relay } from "./relay";
import { switchingPtcDefinition as switchingPtc } from "./switching-ptc";
import { thermistorDefinition as thermistor } from "./thermistor";
import { zenerDefinition as zener } from "./zener";

type Definitions = {
  readonly [Kind in CircuitElement["kind"]]: ElementDefinition<Extract<CircuitElement, { kind: Kind }>>;
};

/** Every kind of element there is. */
export const definitions: Definitions = {
  ...primitives,
  led,
  zener,
  driver,
  comparator,
  motor,
  relay,
  battery,
  alternator,
  thermistor,
  switchingPtc,
  fuse,
};

/** The definition of an element's kind; undefined for a kind that does not exist. */
export function findDefinition(element: CircuitElement): ElementDefinition<CircuitElement> | undefined {
  const kind: unknown = element.kind;
  if (typeof kind !== "string" || !Object.hasOwn(definitions, kind)) return undefined;
  // The table pairs each kind with its own definition, which the compiler cannot follow through a lookup.
  return definitions[element.kind] as unknown as ElementDefinition<CircuitElement>;
}

/** The definition of a checked element's kind. */
export function definitionOf(element: CircuitElement): ElementDefinition<CircuitElement> {
  const definition = findDefinition(element);
  if (!definition) throw new Error(`"${element.id}" is of an unknown kind.`);
  return definition;
}
