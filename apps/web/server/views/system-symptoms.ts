import "server-only";
import type { VehicleDocument } from "@probeworthy/vehicle";

/** Ids of the symptoms that look at one of these components. In the document's order. */
export function symptomsOf(document: VehicleDocument, components: Iterable<string>): string[] {
  const own = new Set(components);
  return document.symptoms.filter(({ value }) => names(value, own)).map(({ id }) => id);
}

/** What one notices of a system. */
export const symptomsOfSystem = (document: VehicleDocument, systemId: string): string[] =>
  symptomsOf(document, document.systems.find(({ id }) => id === systemId)?.components ?? []);

/** Whether an expression names one of these components anywhere inside. */
function names(value: unknown, components: ReadonlySet<string>): boolean {
  if (typeof value === "string") return components.has(value);
  if (typeof value !== "object" || value === null) return false;
  return Object.values(value).some((inner) => names(inner, components));
}
