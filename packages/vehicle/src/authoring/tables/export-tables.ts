import type { VehicleDocument } from "../../document/vehicle-document";

type Cell = string | number | undefined;

const quoted = (cell: Cell): string => {
  const text = cell === undefined ? "" : String(cell);
  return /[",;\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** CSV after RFC 4180: comma, CR LF at the end of each record, quotes where a cell needs them. */
const toCsv = (records: readonly (readonly Cell[])[]): string =>
  records.map((record) => `${record.map(quoted).join(",")}\r\n`).join("");

/** A vehicle's connectors and conductors as the two lists that `importTables` reads. */
export function exportTables({
  connectors,
  conductors,
}: Pick<VehicleDocument, "connectors" | "conductors">): {
  readonly connectors: string;
  readonly conductors: string;
} {
  const faces = connectors.flatMap(({ cavities, ...connector }) =>
    cavities.map(({ cavity, terminal, contactOhms }) => [
      connector.id,
      cavity,
      connector.component,
      terminal,
      connector.title,
      connector.place,
      connector.zone,
      connector.housing,
      connector.rows,
      connector.columns,
      contactOhms,
    ]),
  );
  const wires = conductors.map((conductor) => [
    conductor.id,
    conductor.from,
    conductor.to,
    conductor.colour,
    conductor.squareMillimetres,
    conductor.metres,
    conductor.twistedPair,
  ]);
  return {
    connectors: toCsv([
      [
        "connector",
        "cavity",
        "component",
        "terminal",
        "title",
        "place",
        "zone",
        "housing",
        "rows",
        "columns",
        "contact ohms",
      ],
      ...faces,
    ]),
    conductors: toCsv([
      ["conductor", "from", "to", "colour", "cross-section (mm²)", "length (m)", "twisted pair"],
      ...wires,
    ]),
  };
}
