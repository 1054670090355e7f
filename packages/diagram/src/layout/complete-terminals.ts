import type { Component, VehicleDocument } from "@probeworthy/vehicle";
import type { Side } from "../geometry";
import { componentTerminals, resolveEnd } from "./conductor-ends";
import { isBox, type Slot } from "./draft";

/** What is wired on a component but not drawn on this sheet; undefined when nothing is missing. */
export function moreOf(
  document: VehicleDocument,
  component: Component,
  slots: readonly Slot[],
  systemId: string,
) {
  const drawn = new Set(slots.map((slot) => slot.name));
  const wired = new Set(
    document.conductors.flatMap(({ from, to }) =>
      [from, to].flatMap((text) => {
        const end = resolveEnd(document, text);
        return end?.owner === component.id && end.terminal !== undefined ? [end.terminal] : [];
      }),
    ),
  );
  const terminals = [...wired].filter((name) => !drawn.has(name)).length;
  if (terminals === 0) return undefined;
  const systems = document.systems.filter(
    (system) => system.id !== systemId && system.components.includes(component.id),
  );
  return { terminals, systems: systems.map((system) => system.id) };
}

/** Small symbols show all their terminals, wired or not: a lamp has two legs on every sheet. */
export function completeTerminals(document: VehicleDocument, component: Component, slots: Slot[]): void {
  if (isBox(component) || (component.kind === "switch" && component.terminals.length > 2)) return;
  for (const { name } of componentTerminals(component)) {
    if (slots.some((slot) => slot.name === name)) continue;
    const tops = slots.filter((slot) => slot.side === "top").length;
    const side: Side = tops * 2 > slots.length ? "bottom" : "top";
    const connector = document.connectors.find((candidate) => candidate.component === component.id);
    const cavity = connector?.cavities.find((candidate) => candidate.terminal === name)?.cavity;
    slots.push(
      connector === undefined || cavity === undefined
        ? { key: `${component.id}:${name}`, side, name }
        : { key: `${connector.id}.${cavity}`, side, name, connector: connector.id, cavity },
    );
  }
}
