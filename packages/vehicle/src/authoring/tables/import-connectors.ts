import { toNumber } from "../../charts/chart-columns";
import type { Connector } from "../../document/vehicle-document";
import { zoneSchema } from "../../document/zone";
import { isDesignator, toDesignator } from "./places";
import { readTable, type TableMessage } from "./read-table";
import { connectorColumns } from "./table-columns";

type Building = {
  -readonly [Key in keyof Connector]: Connector[Key];
};

/**
 * Connectors from a table with one row a cavity (`connector`, `cavity`; `component`, `terminal` behind the cavity, `title`,
 * `place`, `zone`, `housing`, `rows`, `columns`, `contact ohms`). Without a column for the terminal it is called as its cavity.
 * What belongs to the connector counts where it first stands.
 */
export function importConnectors(csv: string, messages: TableMessage[]): Connector[] {
  const { rows, present } = readTable(
    "connectors",
    csv,
    connectorColumns,
    [["connector"], ["cavity"]],
    messages,
  );
  const found = new Map<string, Building>();
  for (const { row, cells } of rows) {
    const say = (
      column: keyof typeof connectorColumns,
      severity: TableMessage["severity"],
      message: string,
    ) =>
      messages.push({
        table: "connectors",
        severity,
        row,
        column: connectorColumns[column].title,
        message,
      });
    const id = toDesignator(cells.connector);
    if (!isDesignator(id)) {
      say("connector", "error", `"${cells.connector}" is no designator; write X and a number, such as X12`);
      continue;
    }
    const cavity = cells.cavity.toUpperCase();
    if (!/^[A-Z0-9]{1,3}$/.test(cavity)) {
      say("cavity", "error", `"${cells.cavity}" is no cavity; write one to three digits or letters`);
      continue;
    }
    const connector = found.get(id) ?? { id, title: `Connector ${id}`, rows: 0, columns: 0, cavities: [] };
    found.set(id, connector);
    if (connector.cavities.some((one) => one.cavity === cavity)) {
      say("cavity", "error", `cavity ${cavity} of ${id} stands twice; remove one of the two rows`);
      continue;
    }
    const component = toDesignator(cells.component);
    if (component !== "") {
      if (!isDesignator(component))
        say("component", "error", `"${cells.component}" is no designator; write one such as A1 or M3`);
      else if (connector.component !== undefined && connector.component !== component)
        say("component", "error", `${id} plugs into ${connector.component} above and ${component} here`);
      else connector.component = component;
    }
    if (connector.cavities.length === 0 && cells.title !== "") connector.title = cells.title;
    if (cells.place !== "") connector.place ??= cells.place;
    if (cells.housing !== "") connector.housing ??= cells.housing;
    if (cells.zone !== "") {
      const zone = zoneSchema.safeParse(cells.zone);
      if (zone.success) connector.zone ??= zone.data;
      else say("zone", "warning", `there is no field ${cells.zone} on the plan; left empty`);
    }
    for (const key of ["rows", "columns"] as const) {
      if (cells[key] === "" || connector[key] > 0) continue;
      const value = toNumber(cells[key]);
      if (value !== undefined && Number.isInteger(value) && value > 0) connector[key] = value;
      else say(key, "warning", `"${cells[key]}" is no whole number; chosen to fit`);
    }
    const terminal = present.has("terminal") ? cells.terminal : component === "" ? "" : cavity;
    const contactOhms = cells.contact === "" ? undefined : toNumber(cells.contact);
    if (cells.contact !== "" && (contactOhms === undefined || contactOhms <= 0))
      say("contact", "warning", `"${cells.contact}" is no resistance in Ω; the usual contact is taken`);
    connector.cavities.push({
      cavity,
      ...(terminal === "" ? {} : { terminal }),
      ...(contactOhms !== undefined && contactOhms > 0 ? { contactOhms } : {}),
    });
  }
  return [...found.values()].map(withFace);
}

/** A face with room for all cavities, two rows from seven on. */
function withFace(connector: Building): Connector {
  const { cavities } = connector;
  const rows = connector.rows || (cavities.length > 6 ? 2 : 1);
  const columns = Math.max(connector.columns, Math.ceil(cavities.length / rows));
  return { ...connector, rows, columns };
}
