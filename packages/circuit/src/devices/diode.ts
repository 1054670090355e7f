import { type Evaluation, holdSlope } from "../kernel/iterate";
import type { Diode } from "../network";
import type { TwoTerminals } from "./two-terminal";

/** Leak across every junction, siemens: keeps a node between two blocked diodes defined. */
export const junctionLeak = 1e-12;
/** Boltzmann constant over elementary charge, V/K (CODATA 2018, both exact). */
export const boltzmannOverCharge = 1.380649e-23 / 1.602176634e-19;
/** Reverse amps at the stated breakdown voltage, unless the element says otherwise. */
const breakdownAmps = 1e-3;
/** Beyond this exponent the exponential goes on as its tangent: finite for any voltage. */
const exponentCeiling = 200;

/**
 * Junctions, a = anode, b = cathode. With vt = emission · k·T/q and vr = breakdownEmission · k·T/q:
 *
 *   amps = Is·(exp(v/vt) − 1) − Is·(exp(−(v + knee)/vr) − exp(−knee/vr)) + leak·v
 *
 * (W. Shockley, Bell Syst. Tech. J. 28 (1949) 435; the second term is the usual SPICE breakdown law, with the knee
 * placed so that it gives `breakdownAmps` at `breakdownVolts`, and nothing at 0 V however soft the breakdown.)
 */
export interface DiodeTable extends TwoTerminals {
  readonly saturation: Float64Array;
  readonly thermal: Float64Array;
  /** Voltage of greatest curvature: limiting starts there. */
  readonly critical: Float64Array;
  /** vr of the breakdown. */
  readonly reverseThermal: Float64Array;
  /** Infinity when the junction does not break down. */
  readonly knee: Float64Array;
  /** What the breakdown term would pass at 0 V. */
  readonly offset: Float64Array;
  /** Junction voltage of the last evaluation. */
  readonly last: Float64Array;
  /** Conductance in the Jacobian. */
  readonly held: Float64Array;
  /** Where the exponentials were computed last, NaN for never, with what they gave. */
  readonly base: Float64Array;
  readonly baseAmps: Float64Array;
  readonly baseSlope: Float64Array;
}

export function createDiodeTable(terminals: TwoTerminals, held: Float64Array): DiodeTable {
  const column = () => new Float64Array(terminals.count);
  return {
    ...terminals,
    saturation: column(),
    thermal: column(),
    critical: column(),
    reverseThermal: column(),
    knee: column(),
    offset: column(),
    last: column(),
    held,
    base: column().fill(Number.NaN),
    baseAmps: column(),
    baseSlope: column(),
  };
}

export function setDiode(table: DiodeTable, i: number, element: Diode): void {
  const saturation = element.saturationAmps ?? 1e-14;
  const kelvinVolts = boltzmannOverCharge * ((element.celsius ?? 27) + 273.15);
  const emission = element.emission ?? 1;
  const thermal = emission * kelvinVolts;
  const reverse = (element.breakdownEmission ?? emission) * kelvinVolts;
  const knee =
    element.breakdownVolts === undefined
      ? Number.POSITIVE_INFINITY
      : element.breakdownVolts - reverse * Math.log((element.breakdownAmps ?? breakdownAmps) / saturation);
  table.saturation[i] = saturation;
  table.thermal[i] = thermal;
  table.critical[i] = criticalOf(thermal, saturation);
  table.reverseThermal[i] = reverse;
  table.knee[i] = knee;
  table.base[i] = Number.NaN;
  table.offset[i] = saturation * growth(-knee / reverse);
}

/** Voltage of greatest curvature of an exponential. */
const criticalOf = (thermal: number, saturation: number): number =>
  Math.max(0, thermal * Math.log(thermal / (Math.SQRT2 * saturation)));

/** Cold start: every junction on the bend of its curve, from where Newton goes either way quickly. */
export function resetDiodes(table: DiodeTable): void {
  table.last.set(table.critical);
}

const growth = (z: number): number =>
  z < exponentCeiling ? Math.exp(z) : Math.exp(exponentCeiling) * (1 + z - exponentCeiling);

/**
 * A junction that has moved by less than this part of its thermal voltage goes along its tangent, which errs by half the
 * square of this part of its current: far less than Kirchhoff's law is held to.
 */
const tangentReach = 1e-6;
/** Below this exponent the exponential is lost beside 1 (and so is its slope beside the leak). */
const exponentFloor = -40;

/**
 * Adds each junction, linearised about a limited voltage while the evaluation limits. Returns how many were limited,
 * which means that the balance is not yet that of the true curves. The common case, a junction that blocks or conducts
 * where it did, makes no call but that of the exponential.
 */
export function evaluateDiodes(table: DiodeTable, x: Evaluation): number {
  const { count, a, b, saturation, thermal, critical, reverseThermal, knee, offset, last, held, flow } =
    table;
  const { base, baseAmps, baseSlope } = table;
  const { high, low, amps, isLimiting, isRefreshing } = x;
  let limited = 0;
  for (let i = 0; i < count; i++) {
    const from = a[i];
    const to = b[i];
    const actual = high[from] - high[to] + (low[from] - low[to]);
    const moved = actual - base[i];
    if (!isRefreshing && Math.abs(moved) <= tangentReach * thermal[i]) {
      last[i] = actual;
      amps[flow + i] = baseAmps[i] + baseSlope[i] * moved;
      continue;
    }
    let v = actual;
    if (isLimiting && (actual > critical[i] || actual < -knee[i])) v = limitJunction(table, i, actual);
    last[i] = v;
    const vt = thermal[i];
    const is = saturation[i];
    const z = v / vt;
    let forward = 0;
    if (z > exponentFloor) forward = z < exponentCeiling ? is * Math.exp(z) : is * growth(z);
    const vr = reverseThermal[i];
    const y = -(v + knee[i]) / vr;
    const reverse = y > exponentFloor ? is * growth(y) : 0;
    const slope = forward / vt + reverse / vr + junctionLeak;
    const stated = forward - is - reverse + offset[i] + junctionLeak * v;
    amps[flow + i] = stated + slope * (actual - v);
    base[i] = v;
    baseAmps[i] = stated;
    baseSlope[i] = slope;
    if (v !== actual) limited++;
    if (slope !== held[i]) holdSlope(x, held, i, slope, from, to);
  }
  return limited;
}

function limitJunction(table: DiodeTable, i: number, wanted: number): number {
  const vt = table.thermal[i];
  const knee = table.knee[i];
  const last = table.last[i];
  if (wanted < Math.min(0, -knee)) {
    const vr = table.reverseThermal[i];
    const room = criticalOf(vr, table.saturation[i]);
    const beyond = -(wanted + knee);
    const limited = limitRise(beyond, -(last + knee), vr, room);
    // Back and forth over the knee would round, and a voltage that is not limited must come back as it was.
    return limited === beyond ? wanted : -knee - limited;
  }
  return limitRise(wanted, last, vt, table.critical[i]);
}

/**
 * Lets the voltage rise on the steep part of an exponential no faster than the current would rise linearly.
 * Source: L. W. Nagel, UCB/ERL M520 (1975), junction voltage limiting.
 */
function limitRise(wanted: number, last: number, vt: number, critical: number): number {
  if (wanted <= critical || Math.abs(wanted - last) <= 2 * vt) return wanted;
  if (last <= 0) return vt * Math.log(wanted / vt);
  const rise = 1 + (wanted - last) / vt;
  return rise > 0 ? last + vt * Math.log(rise) : critical;
}
