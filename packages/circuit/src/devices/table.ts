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
  /** Steepest place of each piece between two points of each curve. */
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

export function createCurveTable(terminals: TwoTerminals): CurveTable {
  const nothing = createMonotoneCurve([[0, 0]]);
  return {
    ...terminals,
    curves: Array.from({ length: terminals.count }, () => nothing),
    steepest: Array.from({ length: terminals.count }, () => []),
    last: new Float64Array(terminals.count),
    held: new Float64Array(terminals.count),
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
  table.steepest[i] = curve.x.slice(1).map((_, piece) => steepestOf(curve, piece));
}

/** The slope of a cubic piece is a parabola: steepest at its vertex where that lies inside, or else at an end. */
function steepestOf({ x, y, slope }: MonotoneCurve, piece: number): Steep {
  const width = x[piece + 1] - x[piece];
  const chord = (y[piece + 1] - y[piece]) / width;
  const [left, right] = [slope[piece], slope[piece + 1]];
  // slope(s) = left + (6·chord − 4·left − 2·right)·s − 3·(2·chord − left − right)·s², s from 0 to 1.
  const lift = 6 * chord - 4 * left - 2 * right;
  const bow = 3 * (2 * chord - left - right);
  const s = lift / (2 * bow);
  const vertex = left + (lift * s) / 2;
  if (bow > 0 && s > 0 && s < 1) return { volts: x[piece] + s * width, siemens: vertex };
  return left > right ? { volts: x[piece], siemens: left } : { volts: x[piece + 1], siemens: right };
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

/**
 * Where Newton leaps to and fro between two places, the chord between them is as steep as both tangents together (the
 * tangent at each end leads to the other one). So no step passes a place steeper than that without a stop at it, from
 * where Newton falls short of the solution but never leaps over it.
 */
function limitCurve(table: CurveTable, i: number, wanted: number): number {
  const curve = table.curves[i];
  const last = table.last[i];
  if (wanted === last) return wanted;
  const low = Math.min(wanted, last);
  const high = Math.max(wanted, last);
  let volts = wanted;
  let siemens = curveSlope(curve, last) + curveSlope(curve, wanted);
  for (const steep of table.steepest[i]) {
    if (steep.volts <= low || steep.volts >= high || steep.siemens <= siemens) continue;
    volts = steep.volts;
    siemens = steep.siemens;
  }
  return volts;
}
