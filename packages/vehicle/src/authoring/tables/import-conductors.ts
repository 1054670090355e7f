import type { Conductor } from "../../document/vehicle-document";
import type { Result } from "../../result";
import { parseColour } from "./colours";
import { isDesignator, parseEnd, toDesignator } from "./places";
import { type LengthUnit, parseCrossSection, parseLength } from "./quantities";
import { readTable, type TableMessage } from "./read-table";
import { conductorColumns } from "./table-columns";

type ColumnName = keyof typeof conductorColumns;

/** What is taken where a table says nothing: the author is told. */
const usual = { colour: "BK", squareMillimetres: 1, metres: 1 };

const lengthUnits: readonly string[] = ["m", "mm", "cm", "ft", "in"] satisfies LengthUnit[];

/**
 * Conductors from a table with one row each (`conductor`, `from`, `to`, with or without `from pin` and `to pin`; `colour`,
 * `cross-section` in mm² or `gauge` in AWG, `length`, `twisted pair`). A row whose number or ends cannot be read is left out.
 */
export function importConductors(
  csv: string,
  isConnector: (id: string) => boolean,
  messages: TableMessage[],
): Conductor[] {
  const { rows, units } = readTable(
    "conductors",
    csv,
    conductorColumns,
    [["conductor"], ["from"], ["to"]],
    messages,
  );
  const lengthUnit = lengthUnits.includes(units.length ?? "") ? (units.length as LengthUnit) : "m";
  const sizeUnit = units.size === "awg" ? "awg" : "mm2";
  const seen = new Set<string>();
  return rows.flatMap(({ row, cells }): Conductor[] => {
    const say = (column: ColumnName, severity: TableMessage["severity"], message: string) =>
      messages.push({
        table: "conductors",
        severity,
        row,
        column: conductorColumns[column].title,
        message,
      });
    /** The value read, or the usual one with a warning. */
    const take = <T>(column: ColumnName, text: string, read: () => Result<T, string>, otherwise: T): T => {
      if (text === "") {
        say(column, "warning", `${conductorColumns[column].title} is missing; taken as ${otherwise}`);
        return otherwise;
      }
      const value = read();
      if (value.ok) return value.value;
      say(column, "warning", `${value.error}; taken as ${otherwise}`);
      return otherwise;
    };
    const written = toDesignator(cells.conductor);
    const id = /^\d+[a-z]?$/.test(written) ? `W${written}` : written;
    const from = parseEnd(cells.from, cells.fromPin, isConnector);
    const to = parseEnd(cells.to, cells.toPin, isConnector);
    if (!isDesignator(id))
      say("conductor", "error", `"${cells.conductor}" is no designator; write W and a number, such as W104`);
    else if (seen.has(id)) say("conductor", "error", `${id} stands twice; give one of them another number`);
    if (!from.ok) say("from", "error", from.error);
    if (!to.ok) say("to", "error", to.error);
    if (!from.ok || !to.ok || !isDesignator(id) || seen.has(id)) return [];
    seen.add(id);
    const size = cells.size || cells.gauge;
    const isGauge = cells.size === "" && cells.gauge !== "";
    return [
      {
        id,
        from: from.value,
        to: to.value,
        colour: take("colour", cells.colour, () => parseColour(cells.colour), usual.colour),
        squareMillimetres: take(
          isGauge ? "gauge" : "size",
          size,
          () => parseCrossSection(size, isGauge ? "awg" : sizeUnit),
          usual.squareMillimetres,
        ),
        metres: take("length", cells.length, () => parseLength(cells.length, lengthUnit), usual.metres),
        ...(cells.pair === "" ? {} : { twistedPair: cells.pair }),
      },
    ];
  });
}
