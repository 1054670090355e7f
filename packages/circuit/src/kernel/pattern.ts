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
  /** 1 for each entry that devices other than edges stamp into. */
  readonly isStamped: Uint8Array;
  /**
   * The rows that each edge joins. An edge is a device whose only share in the matrix is a conductance between two
   * nodes; nearly all of a harness is such. Their conductances are gathered row by row and never stamped.
   */
  readonly edges: readonly (readonly [a: number, b: number])[];
}

export interface PatternBuilder {
  /** The entry for a place that a device stamps into, made when new. */
  entry(row: number, column: number): number;
  /** Adds the next edge. */
  edge(a: number, b: number): void;
  finish(): Pattern;
}

export function createPatternBuilder(nodeCount: number, size: number): PatternBuilder {
  const rows: number[] = [-1];
  const columns: number[] = [-1];
  const known = new Map<number, number>();
  const stamped: number[] = [0];
  const edges: (readonly [number, number])[] = [];
  const find = (row: number, column: number): number => {
    if (row === size) return 0;
    const key = row * (size + 1) + column;
    const found = known.get(key);
    if (found !== undefined) return found;
    const made = rows.length;
    known.set(key, made);
    rows.push(row);
    columns.push(column);
    stamped.push(0);
    return made;
  };
  return {
    entry: (row, column) => {
      const found = find(row, column);
      stamped[found] = 1;
      return found;
    },
    edge: (a, b) => {
      edges.push([a, b]);
      for (const row of [a, b]) for (const column of [a, b]) find(row, column);
    },
    finish: () => {
      for (let node = 0; node < nodeCount; node++) find(node, node);
      for (let row = 0; row < size; row++) find(row, size);
      return {
        nodeCount,
        size,
        rows: Int32Array.from(rows),
        columns: Int32Array.from(columns),
        isStamped: Uint8Array.from(stamped),
        edges,
      };
    },
  };
}
