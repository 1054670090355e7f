import type { MatrixValues } from "./factor";
import type { Pattern } from "./pattern";

/** The value of every entry of the pattern, from the shares that the factorisation gathers. */
export function assemble(pattern: Pattern, { siemens, stamped, leak, shunt }: MatrixValues): Float64Array {
  const { size, rows, columns, edges } = pattern;
  const values = Float64Array.from(stamped);
  const entryOf = new Map<number, number>();
  for (let entry = 1; entry < rows.length; entry++)
    entryOf.set(rows[entry] * (size + 1) + columns[entry], entry);
  const add = (row: number, column: number, value: number): void => {
    const entry = entryOf.get(row * (size + 1) + column);
    if (entry !== undefined) values[entry] += value;
  };
  for (const [edge, [a, b]] of edges.entries()) {
    if (a === b) continue;
    add(a, a, siemens[edge]);
    add(a, b, -siemens[edge]);
    add(b, a, -siemens[edge]);
    add(b, b, siemens[edge]);
  }
  for (let node = 0; node < leak.length; node++) {
    add(node, node, leak[node] + shunt);
    add(node, size, -(leak[node] + shunt));
  }
  return values;
}
