/** One measured number of a bench run. */
export interface Measurement {
  /** Dotted path, e.g. "circuit.op150.max_relative_error". */
  readonly name: string;
  readonly value: number;
  readonly unit: string;
}
