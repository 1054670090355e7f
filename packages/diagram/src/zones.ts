import type { Box, Position, Sheet, SheetZones } from "./geometry";

/** Row letters after ISO 5457: no I and no O, which read as figures. */
const rowLetters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
const margin = 28;
const idealField = 180;

/** Zones for a sheet of that size, px. Fields are about 180 px; at least one each way, at most 24 rows. */
export function zonesFor(width: number, height: number): SheetZones {
  const frame: Box = { x: margin, y: margin, width: width - 2 * margin, height: height - 2 * margin };
  return {
    frame,
    columns: Math.max(1, Math.round(frame.width / idealField)),
    rows: Math.min(rowLetters.length, Math.max(1, Math.round(frame.height / idealField))),
  };
}

/** Letter of a row, counted from 0. Throws beyond the last letter. */
export function rowLetter(row: number): string {
  const letter = rowLetters[row];
  if (letter === undefined) throw new Error(`a sheet has no row ${row}`);
  return letter;
}

/** The zone a place lies in, as `C4`. Places outside the frame belong to the nearest zone. */
export function zoneOf(sheet: Pick<Sheet, "zones">, place: Position): string {
  const { frame, columns, rows } = sheet.zones;
  const clamp = (value: number, count: number) => Math.min(count - 1, Math.max(0, Math.floor(value * count)));
  const column = clamp((place.x - frame.x) / frame.width, columns);
  const row = clamp((place.y - frame.y) / frame.height, rows);
  return `${rowLetter(row)}${column + 1}`;
}
