import { across, type Evaluation, holdSlope } from "../kernel/iterate";
import { createMonotoneCurve, curveSlope, curveValue, type MonotoneCurve } from "../physics/monotone-curve";
import type { TwoTerminals } from "./two-terminal";

/** Leak across every curve, siemens: keeps a node between two flat pieces defined. */
export const curveLeak = 1e-12;

/**
 * Devices known by points of their current-voltage curve, a → b: a monotone cubic through the points, straight beyond
 * them (see physics/monotone-curve), and a leak across.
 */
export interface CurveTable extends TwoTerminals {
  readonly curves: MonotoneCurve[];
  /** Of each curve, the places steeper than all about them, by rising volts. */
  readonly steepest: (readonly Steep[])[];
  /** Voltage of the last evaluation. */
  readonly last: Float64Array;
  /** Conductance in the Jacobian. */
  readonly held: Float64Array;
}

interface Steep {
  readonly volts: number;
  readonly siemens: number;
}

export function createCurveTable(terminals: TwoTerminals, held: Float64Array): CurveTable {
  const nothing = createMonotoneCurve([[0, 0]]);
  return {
    ...terminals,
    curves: Array.from({ length: terminals.count }, () => nothing),
    steepest: Array.from({ length: terminals.count }, () => []),
    last: new Float64Array(terminals.count),
    held,
  };
}

/** Gives device i its points: volts rising, amps never falling. Their number may differ from the last time. */
export function setCurve(
  table: CurveTable,
  i: number,
  element: { readonly points: readonly (readonly [volts: number, amps: number])[] },
): void {
  const curve = createMonotoneCurve(element.points);
  table.curves[i] = curve;
  table.steepest[i] = steepPlaces(curve);
}

/** Local maxima of the slope, which lie at points and between them. */
function steepPlaces(curve: MonotoneCurve): readonly Steep[] {
  const places = curve.x.flatMap((volts, i) => [{ volts, siemens: curve.slope[i] }, ...vertexOf(curve, i)]);
  return places.filter(
    ({ siemens }, i) =>
      i > 0 && i < places.length - 1 && siemens >= places[i - 1].siemens && siemens >= places[i + 1].siemens,
  );
}

/** The slope of a cubic piece is a parabola: its vertex, where that lies inside and is the steepest place. */
function vertexOf({ x, y, slope }: MonotoneCurve, piece: number): readonly Steep[] {
  if (piece === x.length - 1) return [];
  const width = x[piece + 1] - x[piece];
  const chord = (y[piece + 1] - y[piece]) / width;
  const [left, right] = [slope[piece], slope[piece + 1]];
  // slope(s) = left + lift·s − bow·s², s from 0 to 1.
  const lift = 6 * chord - 4 * left - 2 * right;
  const bow = 3 * (2 * chord - left - right);
  const s = lift / (2 * bow);
  return bow > 0 && s > 0 && s < 1 ? [{ volts: x[piece] + s * width, siemens: left + (lift * s) / 2 }] : [];
}

/** Cold start: every curve at 0 V. */
export function resetCurves(table: CurveTable): void {
  table.last.fill(0);
}

/** Current of device i at v volts. */
export const curveAmps = (table: CurveTable, i: number, v: number): number =>
  curveValue(table.curves[i], v) + curveLeak * v;

/** Adds each curve. Returns how many were evaluated short of where the node voltages are. */
export function evaluateCurves(table: CurveTable, x: Evaluation): number {
  let limited = 0;
  for (let i = 0; i < table.count; i++) {
    const a = table.a[i];
    const b = table.b[i];
    const actual = across(x, a, b);
    const v = x.isLimiting ? limitCurve(table, i, actual) : actual;
    if (v !== actual) limited++;
    table.last[i] = v;
    const slope = curveSlope(table.curves[i], v) + curveLeak;
    x.amps[table.flow + i] = curveAmps(table, i, v) + slope * (actual - v);
    holdSlope(x, table.held, i, slope, a, b);
  }
  return limited;
}

/** So much steeper than where it comes from is a place that Newton may not pass. */
const muchSteeper = 1.5;

/**
 * From a flat place Newton leaps far over a steep one, and from the flat place beyond back again. So it stops at the
 * nearest place that is much steeper than where it comes from; from there it falls short of the solution, if anything,
 * as long as the curve grows no steeper again.
 */
function limitCurve(table: CurveTable, i: number, wanted: number): number {
  const last = table.last[i];
  if (wanted === last) return wanted;
  const places = table.steepest[i];
  const enough = muchSteeper * (curveSlope(table.curves[i], last) + curveLeak);
  if (wanted > last) {
    for (let k = 0; k < places.length; k++) {
      const { volts, siemens } = places[k];
      if (volts > last && volts < wanted && siemens > enough) return volts;
    }
  } else {
    for (let k = places.length - 1; k >= 0; k--) {
      const { volts, siemens } = places[k];
      if (volts < last && volts > wanted && siemens > enough) return volts;
    }
  }
  return wanted;
}
