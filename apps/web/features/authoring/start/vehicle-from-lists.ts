import { importTables } from "@probeworthy/vehicle/authoring/tables";
import type { ListsPreview } from "../authoring-view";
import { type ComponentKind, componentSpecs } from "../fields/component-specs";
import { looseTerminals } from "../fields/draft-facts";
import { type DraftRecord, newComponent } from "../fields/new-record";
import { blankVehicle } from "./blank-vehicle";

type Message = ListsPreview["messages"][number];

export interface VehicleFromLists {
  readonly document: Record<string, unknown>;
  readonly messages: readonly Message[];
}

/** The kind a letter code (IEC 81346-2) usually stands for; the author changes what is otherwise. */
const usualKind: Readonly<Record<string, ComponentKind>> = {
  G: "battery",
  F: "fuse",
  S: "switch",
  K: "relay",
  M: "motor",
  E: "lamp",
  R: "resistor",
  V: "diode",
  A: "module",
};

/**
 * A draft from a list of connectors (one line a cavity) and a list of conductors, in the forms `importTables` reads. Components
 * are made from the designators that occur, of the kind their letter usually stands for where its terminals fit, of terminals
 * only otherwise. A line that cannot be read is left out and said.
 */
export function vehicleFromLists(
  id: string,
  title: string,
  lists: { readonly connectors: string; readonly conductors: string },
): VehicleFromLists {
  const { connectors, conductors, splices, groundPoints, components, messages } = importTables(lists);
  const base = blankVehicle(id, title);
  const made = components.map((component) => componentOf(component.id, component.terminals));
  return {
    document: {
      ...base,
      components: made.some(({ kind }) => kind === "battery")
        ? made
        : [...(base.components as DraftRecord[]), ...made],
      connectors,
      conductors,
      splices,
      groundPoints: groundPoints.length > 0 ? groundPoints : base.groundPoints,
    },
    messages: messages.map(({ table, row, column, severity, message }) => ({
      file: table,
      line: row,
      severity,
      message: column === "" ? message : `${column}: ${message}`,
    })),
  };
}

function componentOf(id: string, terminals: readonly string[]): DraftRecord {
  const kind = usualKind[/^[A-Z]+/.exec(id)?.[0] ?? ""];
  if (kind === "switch" || kind === "module" || kind === undefined)
    return ownTerminals(kind ?? "passive", id, terminals);
  const usual = { ...newComponent({}, kind), id };
  const offered = looseTerminals(usual);
  return terminals.every((terminal) => offered.includes(terminal))
    ? usual
    : ownTerminals("passive", id, terminals);
}

/** Kinds whose terminals the author names: the list's terminals are theirs. */
function ownTerminals(
  kind: "switch" | "module" | "passive",
  id: string,
  terminals: readonly string[],
): DraftRecord {
  const title = componentSpecs[kind].title;
  const two = terminals.length >= 2 ? terminals : [...terminals, "n"];
  if (kind === "passive") return { kind, id, title, terminals };
  if (kind === "switch") {
    const [first, second] = two;
    const work = { condition: "key", positions: { off: [], on: [[first, second]] } };
    return { ...newComponent({}, kind), id, terminals: two, ...work };
  }
  return { ...newComponent({}, kind), id, terminals: two.map((name) => ({ name, function: "not said" })) };
}
