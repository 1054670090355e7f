import type { Attachable } from "./attachable";
import type { Binding } from "./bindings";
import { tiedIslandLeak, tiesTerminals } from "./connectivity";
import type { Part } from "./elements/definition";
import { definitionOf } from "./elements/registry";
import { nodesOf } from "./expansion";
import type { NewtonSystem } from "./kernel/newton-system";
import { createPorts, type Ports } from "./kernel/ports";
import type { Numbering } from "./numbering";
import { fail, type Result, succeed } from "./result";
import { buildTables } from "./tables";
import { validateElement } from "./validate-element";

const attachableKinds: readonly string[] = [
  "resistor",
  "voltageSource",
  "currentSource",
  "switch",
  "diode",
  "filament",
  "curve",
] satisfies Attachable["kind"][];

/** More would cost as much as preparing the network with them. */
const mostAttached = 16;

/** Elements laid across a network, with their tables. */
export interface Attachments {
  readonly elements: readonly Attachable[];
  readonly nodes: readonly (readonly number[])[];
  readonly bindings: readonly Binding[];
  readonly ports: Ports;
}

/** Checks an element to be attached beside others. Errors: invalid_element, duplicate_id, unknown_node. */
export function checkAttachable(
  element: Attachable,
  isTaken: (id: string) => boolean,
  attached: number,
  numbering: Numbering,
): Result<void> {
  const { id } = element;
  const valid = validateElement(element);
  if (!valid.ok) return valid;
  const where = { element: id };
  if (!attachableKinds.includes(element.kind)) {
    const message = `"${id}" is a ${element.kind}; only these can be attached: ${attachableKinds.join(", ")}.`;
    return fail("invalid_element", message, where);
  }
  if (element.kind === "voltageSource" && element.ohms === undefined)
    return fail("invalid_element", `"${id}" needs ohms to be attached.`, { ...where, field: "ohms" });
  if (element.kind === "diode" && element.seriesOhms !== undefined) {
    const message = `"${id}" must not have seriesOhms to be attached; a curve can hold the two together.`;
    return fail("invalid_element", message, { ...where, field: "seriesOhms" });
  }
  if (isTaken(id)) return fail("duplicate_id", `Two elements are called "${id}".`, where);
  if (attached >= mostAttached) {
    const message = `"${id}" is one too many: ${mostAttached} elements are attached; prepare the network with them.`;
    return fail("invalid_element", message, where);
  }
  for (const node of nodesOf(element)) {
    if (numbering.indexOf.has(node)) continue;
    return fail("unknown_node", `"${id}" is to go to node "${node}", which the network does not have.`, {
      ...where,
      node,
    });
  }
  return succeed(undefined);
}

/** What reading needs of the attachments of a solution. */
export interface AttachedFigures {
  readonly elements: readonly Attachable[];
  readonly bindings: readonly Binding[];
  readonly ports: { readonly x: { readonly amps: Float64Array } };
}

/** The same, with currents that later solves do not touch. */
export const freezeAttached = (attached: Attachments | undefined): AttachedFigures | undefined =>
  attached && {
    elements: attached.elements,
    bindings: attached.bindings,
    ports: { x: { amps: attached.ports.x.amps.slice() } },
  };

/** The one part that an attachable element is made of, with the ohms that a resistor has at its temperature. */
export const attachedPart = (element: Attachable): Part => definitionOf(element).parts(element, 0, false)[0];

/** Pairs of nodes that the attachments tie. */
export const tiedPairs = ({ elements, nodes }: Attachments): readonly (readonly number[])[] =>
  nodes.filter((_, i) => tiesTerminals(attachedPart(elements[i])));

/** Builds the tables of attached elements; undefined for none. */
export function buildAttachments(
  elements: readonly Attachable[],
  numbering: Numbering,
  system: NewtonSystem,
): Attachments | undefined {
  if (elements.length === 0) return undefined;
  const nodes = elements.map((element) =>
    nodesOf(element).map((name) => numbering.indexOf.get(name) ?? numbering.ground),
  );
  const unknown = new Int32Array(elements.length).fill(-1);
  const { flows, tables, bindings } = buildTables(elements.map(attachedPart), {
    ...numbering,
    nodes,
    unknown,
  });
  return { elements, nodes, bindings, ports: createPorts(flows, tables, system.x, tiedIslandLeak) };
}
