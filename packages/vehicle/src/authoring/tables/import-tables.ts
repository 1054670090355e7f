import { terminalNameSchema } from "../../document/names";
import type { Conductor, Connector } from "../../document/vehicle-document";
import { importConductors } from "./import-conductors";
import { importConnectors } from "./import-connectors";
import type { TableMessage } from "./read-table";

export interface ImportedTables {
  readonly connectors: readonly Connector[];
  readonly conductors: readonly Conductor[];
  readonly splices: readonly { readonly id: string }[];
  readonly groundPoints: readonly { readonly id: string; readonly title: string }[];
  /** Components that occur, with nothing known of them but their terminals: the author says what they are. */
  readonly components: readonly {
    readonly kind: "passive";
    readonly id: string;
    readonly title: string;
    readonly terminals: string[];
  }[];
  /** In the order of the files; rows with an error are left out. */
  readonly messages: readonly TableMessage[];
}

/**
 * The parts of a vehicle from the two lists people keep of a harness, as CSV text: see `importConnectors` and
 * `importConductors` for their columns. Cavities that only conductors name are added to their connector; splices and ground
 * points are those that conductors end at.
 */
export function importTables(tables: {
  readonly connectors: string;
  readonly conductors: string;
}): ImportedTables {
  const messages: TableMessage[] = [];
  const listed = importConnectors(tables.connectors, messages);
  const conductors = importConductors(
    tables.conductors,
    (id) => listed.some((connector) => connector.id === id),
    messages,
  );
  const connectors = withNamedCavities(listed, conductors, messages);
  const ends = conductors.flatMap(({ from, to }) => [from, to]);
  const joints = [...new Set(ends.filter((end) => /^X[A-Z]{0,2}[0-9]+$/.test(end)))];
  const isGround = (id: string): boolean => id.startsWith("XE");
  return {
    connectors,
    conductors,
    splices: joints.filter((id) => !isGround(id)).map((id) => ({ id })),
    groundPoints: joints.filter(isGround).map((id) => ({ id, title: `Ground point ${id}` })),
    components: namedComponents(connectors, ends, messages),
    messages,
  };
}

/** Connectors and cavities that stand only at a conductor's end: in-line ones, as far as the lists tell. */
function withNamedCavities(
  listed: readonly Connector[],
  conductors: readonly Conductor[],
  messages: TableMessage[],
): Connector[] {
  const missing = new Map<string, Set<string>>();
  for (const end of conductors.flatMap(({ from, to }) => [from, to])) {
    const [id = "", cavity] = end.replace(/\/b$/, "").split(".");
    if (cavity === undefined || end.includes(":")) continue;
    const known = listed.find((connector) => connector.id === id);
    if (known?.cavities.some((one) => one.cavity === cavity)) continue;
    missing.set(id, (missing.get(id) ?? new Set()).add(cavity));
  }
  for (const [id, cavities] of missing)
    messages.push({
      table: "connectors",
      severity: "warning",
      row: 0,
      column: "cavity",
      message: `${id} has no row for cavity ${[...cavities].join(", ")}, where conductors end; added without a terminal behind`,
    });
  const added = [...missing].map(([id, names]): Connector => {
    const cavities = [...names].map((cavity) => ({ cavity }));
    const known = listed.find((connector) => connector.id === id);
    const base = known ?? { id, title: `Connector ${id}`, rows: 1, columns: 1, cavities: [] };
    const all = [...base.cavities, ...cavities];
    return { ...base, cavities: all, columns: Math.max(base.columns, Math.ceil(all.length / base.rows)) };
  });
  const changed = new Map(added.map((connector) => [connector.id, connector]));
  return [
    ...listed.map((connector) => changed.get(connector.id) ?? connector),
    ...added.filter(({ id }) => !listed.some((connector) => connector.id === id)),
  ];
}

function namedComponents(
  connectors: readonly Connector[],
  ends: readonly string[],
  messages: TableMessage[],
): ImportedTables["components"] {
  const terminals = new Map<string, Set<string>>();
  const use = (component: string, terminal: string): void => {
    if (terminalNameSchema.safeParse(terminal).success)
      terminals.set(component, (terminals.get(component) ?? new Set()).add(terminal));
    else
      messages.push({
        table: "connectors",
        severity: "error",
        row: 0,
        column: "terminal",
        message: `"${terminal}" is no terminal of ${component}; write one to eight letters, digits, +, - or /`,
      });
  };
  for (const { component, cavities } of connectors)
    if (component !== undefined)
      for (const { terminal } of cavities) if (terminal !== undefined) use(component, terminal);
  for (const end of ends) {
    const [component = "", terminal] = end.split(":");
    if (terminal !== undefined) use(component, terminal);
  }
  return [...terminals].map(([id, names]) => ({
    kind: "passive",
    id,
    title: `Component ${id}`,
    terminals: [...names],
  }));
}
