import { colourCodes } from "@probeworthy/vehicle";
import type { Suggestion } from "./field-spec";
import { type Draft, type DraftRecord, recordsOf } from "./new-record";

const strings = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((one): one is string => typeof one === "string") : [];
const asRecord = (value: unknown): DraftRecord =>
  typeof value === "object" && value !== null ? (value as DraftRecord) : {};
const records = (value: unknown): DraftRecord[] => (Array.isArray(value) ? value.map(asRecord) : []);
const names = (list: readonly unknown[]): string[] => [...new Set(strings(list))];

/** Terminal names of a component however half done; those of a complete one in the order of the form. */
export function looseTerminals(component: DraftRecord): string[] {
  switch (component.kind) {
    case "battery":
      return ["+", "-"];
    case "chargingSource":
      return [
        "B+",
        "31",
        ...(component.sense === "wire" ? ["S"] : []),
        ...(component.lampOhms === undefined ? [] : ["D+"]),
      ];
    case "switch":
    case "composed":
    case "passive":
      return strings(component.terminals);
    case "relay": {
      const own = Object.values(asRecord(component.terminals));
      if (own.length > 0) return names(own);
      return ["86", "85", "30", "87", ...(component.contact === "changeOver" ? ["87a"] : [])];
    }
    case "twoFilamentLamp":
    case "torqueSensor":
      return names(Object.values(asRecord(component.terminals)));
    case "positionSensor":
      return names(
        records(component.tracks).flatMap(({ supply, ground, signal }) => [supply, ground, signal]),
      );
    case "module":
      return names(records(component.terminals).map(({ name }) => name));
    default:
      return ["1", "2"];
  }
}

/** Every place a conductor may end, in the order of the lists. */
export function endsOf(draft: Draft): string[] {
  const components = recordsOf(draft, "components").flatMap((component) =>
    looseTerminals(component).map((terminal) => `${String(component.id)}:${terminal}`),
  );
  const cavities = recordsOf(draft, "connectors").flatMap(({ id, cavities: list, component }) =>
    records(list).flatMap(({ cavity }) => {
      const end = `${String(id)}.${String(cavity)}`;
      return component === undefined ? [end, `${end}/b`] : [end];
    }),
  );
  const plugged = new Set(
    recordsOf(draft, "connectors").flatMap(({ component, cavities: list }) =>
      records(list).map(({ terminal }) => `${String(component)}:${String(terminal)}`),
    ),
  );
  const joints = (["splices", "groundPoints"] as const).flatMap((section) =>
    recordsOf(draft, section).map(({ id }) => String(id)),
  );
  // A terminal behind a plug is reached by the plug's cavity.
  return [...components.filter((end) => !plugged.has(end)), ...cavities, ...joints];
}

const idsOf = (draft: Draft, section: "components" | "connectors", kind?: string): string[] =>
  recordsOf(draft, section)
    .filter((record) => kind === undefined || record.kind === kind)
    .map(({ id }) => String(id));

const conditionsOf = (draft: Draft, kind: "choice" | "number"): string[] =>
  recordsOf(draft, "conditions")
    .filter((condition) => condition.kind === kind)
    .map(({ name }) => String(name));

/** What may be offered while typing. */
export function suggestionsOf(
  draft: Draft,
  suggestion: Exclude<Suggestion, "zones" | "ownTerminals">,
): string[] {
  switch (suggestion) {
    case "choiceConditions":
      return conditionsOf(draft, "choice");
    case "numberConditions":
      return conditionsOf(draft, "number");
    case "components":
      return idsOf(draft, "components");
    case "modules":
      return idsOf(draft, "components", "module");
    case "motors":
      return idsOf(draft, "components", "motor");
    case "connectors":
      return idsOf(draft, "connectors");
    case "ends":
      return endsOf(draft);
    case "colours":
      return [...colourCodes];
    case "points":
      return endsOf(draft).map((end) => {
        if (/^XE\d/.test(end)) return `${end}:ring`;
        if (!end.includes(".")) return end;
        return end.endsWith("/b") ? `${end.slice(0, -2)}:b` : `${end}:h`;
      });
  }
}

/** The options of a choice condition, in order; undefined for any other name. */
export function optionsOf(draft: Draft, condition: string): string[] | undefined {
  const found = recordsOf(draft, "conditions").find(
    ({ name, kind }) => name === condition && kind === "choice",
  );
  return found === undefined ? undefined : records(found.options).map(({ value }) => String(value));
}
