import { across, type Evaluation, holdSlope } from "../kernel/iterate";
import type { Filament } from "../network";
import type { TwoTerminals } from "./two-terminal";

/**
 * Filaments in thermal balance. Well above the cold region I ∝ V^exponent (lamp re-rating law, exponent 0.55:
 * https://en.wikipedia.org/wiki/Lamp_rerating); towards 0 V the resistance falls to coldRatio times the rated one.
 * One smooth, odd, rising curve through both, exact at the rated point:
 *
 *   I(V) = (V / Rcold) · (1 + (V/knee)²)^((exponent − 1)/2)
 */
export interface FilamentTable extends TwoTerminals {
  readonly coldSiemens: Float64Array;
  readonly knee: Float64Array;
  readonly exponent: Float64Array;
  /** Conductance in the Jacobian. */
  readonly held: Float64Array;
}

export function createFilamentTable(terminals: TwoTerminals, held: Float64Array): FilamentTable {
  const column = () => new Float64Array(terminals.count);
  return { ...terminals, coldSiemens: column(), knee: column(), exponent: column(), held };
}

export function setFilament(table: FilamentTable, i: number, element: Filament): void {
  const exponent = element.exponent ?? 0.55;
  const coldRatio = element.coldRatio ?? 1 / 15;
  table.exponent[i] = exponent;
  table.coldSiemens[i] = element.ratedWatts / (coldRatio * element.ratedVolts ** 2);
  // From I(ratedVolts) = ratedWatts / ratedVolts: (1 + (rated/knee)²)^((exponent − 1)/2) = coldRatio.
  table.knee[i] = element.ratedVolts / Math.sqrt(coldRatio ** (2 / (exponent - 1)) - 1);
}

export function evaluateFilaments(table: FilamentTable, x: Evaluation): void {
  for (let i = 0; i < table.count; i++) {
    const a = table.a[i];
    const b = table.b[i];
    const v = across(x, a, b);
    const u = v / table.knee[i];
    const square = 1 + u * u;
    const exponent = table.exponent[i];
    const chord = table.coldSiemens[i] * square ** ((exponent - 1) / 2);
    x.amps[table.flow + i] = chord * v;
    const slope = (chord * (1 + exponent * u * u)) / square;
    holdSlope(x, table.held, i, slope, a, b);
  }
}
