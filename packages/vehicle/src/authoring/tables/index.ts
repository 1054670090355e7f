export { parseColour } from "./colours";
export { exportTables } from "./export-tables";
export { type ImportedTables, importTables } from "./import-tables";
export { parseEnd } from "./places";
export { awgSquareMillimetres, parseCrossSection, parseLength } from "./quantities";
export type { TableMessage } from "./read-table";
