import "server-only";
import type { VehicleDocument } from "@probeworthy/vehicle";

/**
 * Names of the operating conditions that act on a system: those its components and their controls name, and what those
 * depend on in turn. In the document's order.
 */
export function conditionsOfSystem(document: VehicleDocument, systemId: string): string[] {
  const system = document.systems.find(({ id }) => id === systemId);
  const own = new Set(system?.components);
  const parts = document.components.filter(({ id }) => own.has(id));
  const found = new Set<string>();
  for (const part of parts) collect(part, found);
  for (const condition of document.conditions)
    if (condition.kind === "number" && condition.onlyWhen !== undefined && found.has(condition.name))
      found.add(condition.onlyWhen.condition);
  return document.conditions.map(({ name }) => name).filter((name) => found.has(name));
}

/** Every `{ condition: name }` anywhere inside, whether of a switch or of an expression. */
function collect(value: unknown, found: Set<string>): void {
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    if (key === "condition" && typeof inner === "string") found.add(inner);
    else collect(inner, found);
  }
}
