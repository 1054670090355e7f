/**
 * Which (row, column) places of the system matrix can ever be non-zero. Built once per topology.
 *
 * Unknowns 0 … nodeCount−1 are node voltages, nodeCount … size−1 branch currents; index `size` is ground. Row i is
 * the Kirchhoff current law of node i, or the defining equation of branch i. The ground column is kept: every
 * equation depends on voltage differences only, so each row sums to zero over all node columns with ground, and
 * the factorisation uses that (see factor.ts).
 *
 * Entry 0 is a bin for places that do not exist (the row of ground), which spares the stamping loops a branch.
 */
export interface Pattern {
  readonly nodeCount: number;
  readonly size: number;
  /** Row and column of each entry; entry 0 is the bin and has row −1. */
  readonly rows: Int32Array;
  readonly columns: Int32Array;
}

export interface PatternBuilder {
  /** The entry for a place, made when new. */
  entry(row: number, column: number): number;
  finish(): Pattern;
}

export function createPatternBuilder(nodeCount: number, size: number): PatternBuilder {
  const rows: number[] = [-1];
  const columns: number[] = [-1];
  const known = new Map<number, number>();
  const entry = (row: number, column: number): number => {
    if (row === size) return 0;
    const key = row * (size + 1) + column;
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = rows.length;
    known.set(key, made);
    rows.push(row);
    columns.push(column);
    return made;
  };
  return {
    entry,
    finish: () => {
      for (let node = 0; node < nodeCount; node++) entry(node, node);
      for (let row = 0; row < size; row++) entry(row, size);
      return { nodeCount, size, rows: Int32Array.from(rows), columns: Int32Array.from(columns) };
    },
  };
}
