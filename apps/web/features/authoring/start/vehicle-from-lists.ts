import { conductorColourSchema, conductorEndSchema, designatorSchema } from "@probeworthy/vehicle";
import { emptyAsNull } from "@/features/forms/form-values";
import type { ListsPreview } from "../authoring-view";
import { type ComponentKind, componentSpecs } from "../fields/component-specs";
import { looseTerminals } from "../fields/draft-facts";
import { type DraftRecord, newComponent } from "../fields/new-record";
import { blankVehicle } from "./blank-vehicle";
import { type Columns, parseTable, type TableRow } from "./parse-table";

type Message = ListsPreview["messages"][number];

export interface VehicleFromLists {
  readonly document: Record<string, unknown>;
  readonly messages: readonly Message[];
}

const connectorColumns: Columns = {
  connector: ["plug", "id", "designator"],
  cavity: ["pin", "chamber"],
  component: ["part", "plugs into"],
  terminal: ["component terminal"],
  title: ["name", "description"],
};
const conductorColumns: Columns = {
  conductor: ["wire", "id", "number", "no"],
  from: ["start", "end 1"],
  to: ["end", "end 2"],
  colour: ["color"],
  mm2: ["mm²", "cross-section", "area", "squaremillimetres"],
  length: ["metres", "length m", "m"],
};

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
 * A draft from a list of connectors (one line a cavity) and a list of conductors. Components are made from the designators
 * that occur, of the kind their letter usually stands for where its terminals fit, of terminals only otherwise. A line that
 * cannot be read is left out and said.
 */
export function vehicleFromLists(
  id: string,
  title: string,
  lists: { readonly connectors: string; readonly conductors: string },
): VehicleFromLists {
  const messages: Message[] = [];
  const say = (file: Message["file"], line: number, severity: Message["severity"], message: string) =>
    messages.push({ file, line, severity, message });
  const read = (
    file: Message["file"],
    columns: Columns,
    required: readonly string[],
  ): readonly TableRow[] => {
    const table = parseTable(lists[file], columns, required);
    if (table.ok) return table.rows;
    say(file, table.line, "error", table.message);
    return [];
  };
  const connectors = readConnectors(read("connectors", connectorColumns, ["connector", "cavity"]), say);
  const conductors = readConductors(read("conductors", conductorColumns, ["conductor", "from", "to"]), say);
  const base = blankVehicle(id, title);
  const used = terminalsUsed(connectors, conductors);
  const components = [...used].map(([component, terminals]) => componentOf(component, [...terminals]));
  const ends = conductors.flatMap(({ from, to }) => [String(from), String(to)]);
  const joints = [...new Set(ends.filter((end) => /^X[A-Z]*\d+$/.test(end)))].sort();
  const grounds = joints
    .filter((end) => end.startsWith("XE"))
    .map((end) => ({ id: end, title: "Ground point" }));
  return {
    document: {
      ...base,
      components: components.some(({ kind }) => kind === "battery")
        ? components
        : [...(base.components as DraftRecord[]), ...components],
      connectors,
      conductors,
      splices: joints.filter((end) => !end.startsWith("XE")).map((end) => ({ id: end })),
      groundPoints: grounds.length > 0 ? grounds : base.groundPoints,
    },
    messages,
  };
}

type Say = (file: Message["file"], line: number, severity: Message["severity"], message: string) => void;

function readConnectors(rows: readonly TableRow[], say: Say): DraftRecord[] {
  const found = new Map<string, { title: string; component?: string; cavities: DraftRecord[] }>();
  for (const { line, cells } of rows) {
    const { connector = "", cavity = "", component = "", terminal = "", title = "" } = cells;
    const refuse = (message: string) => say("connectors", line, "error", message);
    if (!designatorSchema.safeParse(connector).success) {
      refuse(`"${connector}" is no designator; write capital letters and a number, such as X12`);
      continue;
    }
    if (!/^[A-Z0-9]{1,3}$/.test(cavity)) {
      refuse(`"${cavity}" is no cavity; write one to three digits or capital letters`);
      continue;
    }
    const known = found.get(connector) ?? { title: title || `Connector ${connector}`, cavities: [] };
    found.set(connector, known);
    if (known.cavities.some((one) => one.cavity === cavity)) {
      refuse(`cavity ${cavity} of ${connector} stands twice`);
      continue;
    }
    if (component !== "" && known.component !== undefined && known.component !== component)
      say(
        "connectors",
        line,
        "warning",
        `${connector} plugs into ${known.component} above and ${component} here`,
      );
    if (component !== "") known.component ??= component;
    known.cavities.push({ cavity, ...(terminal === "" ? {} : { terminal }) });
  }
  return [...found].map(([id, { title, component, cavities }]) => ({
    id,
    title,
    rows: cavities.length > 6 ? 2 : 1,
    columns: cavities.length > 6 ? Math.ceil(cavities.length / 2) : cavities.length,
    ...(component === undefined ? {} : { component }),
    cavities,
  }));
}

function readConductors(rows: readonly TableRow[], say: Say): DraftRecord[] {
  const seen = new Set<string>();
  return rows.flatMap(({ line, cells }) => {
    const { conductor = "", from = "", to = "", colour = "", mm2 = "", length = "" } = cells;
    const problem =
      (!designatorSchema.safeParse(conductor).success &&
        `"${conductor}" is no designator; write capital letters and a number, such as W104`) ||
      (seen.has(conductor) && `${conductor} stands twice`) ||
      [from, to]
        .filter((end) => !conductorEndSchema.safeParse(end).success)
        .map((end) => `"${end}" is no end; write X2.5, XS1, XE1 or G1:+`)[0];
    if (typeof problem === "string") {
      say("conductors", line, "error", problem);
      return [];
    }
    seen.add(conductor);
    const numberOf = (text: string, usual: number, what: string): unknown => {
      const value = emptyAsNull(text);
      if (typeof value === "number") return value;
      say(
        "conductors",
        line,
        "warning",
        `${what} ${value === null ? "is missing" : `"${text}" is no number`}; taken as ${usual}`,
      );
      return usual;
    };
    const isColour = conductorColourSchema.safeParse(colour.toUpperCase()).success;
    if (!isColour)
      say(
        "conductors",
        line,
        "warning",
        `"${colour}" is no colour of IEC 60757, such as RD or YEBK; taken as BK`,
      );
    return [
      {
        id: conductor,
        from,
        to,
        colour: isColour ? colour.toUpperCase() : "BK",
        squareMillimetres: numberOf(mm2, 1, "the cross-section"),
        metres: numberOf(length, 1, "the length"),
      },
    ];
  });
}

function terminalsUsed(
  connectors: readonly DraftRecord[],
  conductors: readonly DraftRecord[],
): Map<string, Set<string>> {
  const used = new Map<string, Set<string>>();
  const use = (component: string, terminal: string) =>
    used.set(component, (used.get(component) ?? new Set()).add(terminal));
  for (const { component, cavities } of connectors) {
    if (typeof component !== "string") continue;
    for (const { terminal } of cavities as readonly DraftRecord[])
      if (typeof terminal === "string") use(component, terminal);
  }
  for (const { from, to } of conductors)
    for (const end of [String(from), String(to)]) {
      const [component = "", terminal] = end.split(":");
      if (terminal !== undefined) use(component, terminal);
    }
  return used;
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
