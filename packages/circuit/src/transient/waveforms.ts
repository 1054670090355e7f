import { type Columns, measureRows, timeRows } from "./measure";
import { ampsKey, inside, quantityKey, type Rows, voltsKey } from "./recorder";
import type { MeasuredWaveforms, Signal, Waveforms } from "./transient-circuit";

/** Rows of stages inside a step are not shown; they serve to interpolate. */
export function readRows(rows: Rows): MeasuredWaveforms {
  const { width, values, columns } = rows;
  const shown = listShown(rows);
  const pick = (column: number): Float64Array => {
    const samples = new Float64Array(shown.length);
    for (let k = 0; k < shown.length; k++) samples[k] = values[shown[k] * width + column];
    return samples;
  };
  const columnOf = (key: string): number => {
    const column = columns.get(key);
    if (column === undefined) throw new Error(`Not recorded: ${key}.`);
    return column;
  };
  const columnsOf = (signal: Signal): Columns => {
    if ("amps" in signal) return [[columnOf(ampsKey(signal.amps)), 1]];
    if ("quantity" in signal) return [[columnOf(quantityKey(signal.element, signal.quantity)), 1]];
    const plus = [columnOf(voltsKey(signal.plus)), 1] as const;
    return signal.minus === undefined ? [plus] : [plus, [columnOf(voltsKey(signal.minus)), -1]];
  };
  return {
    measure: (signal) => measureRows(rows, columnsOf(signal)),
    timing: (signal, threshold) => timeRows(rows, columnsOf(signal), threshold),
    seconds: pick(0),
    volts: (node) => pick(columnOf(voltsKey(node))),
    amps: (element) => pick(columnOf(ampsKey(element))),
    quantity: (element, name) => pick(columnOf(quantityKey(element, name))),
    samplesAt: (seconds) => readSamples(rows, shown, Float64Array.from(seconds), columnOf),
  };
}

function listShown({ kinds, count }: Rows): Int32Array {
  const shown = new Int32Array(count);
  let k = 0;
  for (let row = 0; row < count; row++) if (kinds[row] !== inside) shown[k++] = row;
  return shown.slice(0, k);
}

function readSamples(
  rows: Rows,
  shown: Int32Array,
  seconds: Float64Array,
  columnOf: (key: string) => number,
): Waveforms {
  const last = shown.length - 1;
  const [from, until] = [rows.values[shown[0] * rows.width], rows.values[shown[last] * rows.width]];
  for (const t of seconds) if (!(t >= from && t <= until)) throw new Error(`${t} s was not recorded.`);
  const sample = (column: number): Float64Array => seconds.map((t) => interpolate(rows, shown, t, column));
  return {
    seconds,
    volts: (node) => sample(columnOf(voltsKey(node))),
    amps: (element) => sample(columnOf(ampsKey(element))),
    quantity: (element, name) => sample(columnOf(quantityKey(element, name))),
    samplesAt: (others) => readSamples(rows, shown, Float64Array.from(others), columnOf),
  };
}

/** Lagrange's polynomial through all rows of the step that holds `t`. */
function interpolate({ values, width }: Rows, shown: Int32Array, t: number, column: number): number {
  const timeOf = (k: number): number => values[shown[k] * width];
  const last = shown.length - 1;
  // The last shown row at or before t starts the step.
  let low = 0;
  let high = last;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (timeOf(middle) <= t) low = middle;
    else high = middle - 1;
  }
  if (low === last) return values[shown[last] * width + column];
  const from = shown[low];
  const to = shown[low + 1];
  let sum = 0;
  for (let i = from; i <= to; i++) {
    const ti = values[i * width];
    let factor = 1;
    for (let j = from; j <= to; j++) {
      if (j !== i) factor *= (t - values[j * width]) / (ti - values[j * width]);
    }
    sum += factor * values[i * width + column];
  }
  return sum;
}
