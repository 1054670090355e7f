import { createMonotoneCurve, cubicSlope, cubicValue, curveValue, limitSlope } from "./monotone-curve";
import { lawThrough, type ThermistorPoint } from "./steinhart-hart";

const kelvin = 273.15;
/** What any table is held between, Ω: a weld and a dry air gap. */
const leastOhms = 1e-6;
const mostOhms = 1e12;

/**
 * Ohms at `celsius` of a temperature-dependent resistor from a table of [°C, Ω] in any order, ohms above 0.
 *
 * Where the ohms fall from each temperature to the next (NTC), 1/T is a smooth cubic in ln R that takes at each point
 * the slope of the Steinhart–Hart law through it and its neighbours: exactly that law for three points, the beta law
 * for two. Otherwise (PTC, or a table that turns) ln R is a smooth cubic in °C. Either way the curve meets every point,
 * never leaves the span of two neighbours, and has no kink.
 *
 * Beyond the outermost points the end slope goes on straight in the same coordinates (for an NTC: a beta law), held
 * between 1 µΩ and 1e12 Ω. A table of one point is constant; of points at the same temperature the first counts.
 */
export function thermistorOhms(table: readonly ThermistorPoint[], celsius: number): number {
  const points = [...table]
    .sort((left, right) => left[0] - right[0])
    .filter(([at], i, all) => at !== all[i - 1]?.[0]);
  const falls = points.every(([, ohms], i) => ohms < (points[i - 1]?.[1] ?? Number.POSITIVE_INFINITY));
  const logarithm =
    falls && points.length > 1
      ? fallingLogarithm(points, celsius)
      : curveValue(createMonotoneCurve(points.map(([at, ohms]) => [at, Math.log(ohms)])), celsius);
  return Math.min(mostOhms, Math.max(leastOhms, Math.exp(logarithm)));
}

/** A point as the law sees it: l = ln R, y = 1/T. */
interface Knot {
  readonly l: number;
  readonly y: number;
}

function fallingLogarithm(points: readonly ThermistorPoint[], celsius: number): number {
  // From hot to cold, so that both coordinates rise.
  const knots = points.map(([at, ohms]): Knot => ({ l: Math.log(ohms), y: 1 / (at + kelvin) })).reverse();
  const y = 1 / Math.max(1, celsius + kelvin);
  const above = knots.findIndex((knot) => knot.y >= y);
  const next = above === -1 ? knots.length : above;
  const low = knots[next - 1];
  const high = knots[next];
  if (low && high) return invert(low, slopeAt(knots, next - 1), high, slopeAt(knots, next), y);
  const end = low ?? high ?? { l: 0, y };
  return end.l + (y - end.y) / slopeAt(knots, low ? next - 1 : next);
}

/** d(1/T)/d(ln R) at a knot: that of the law through it and its neighbours, as far as it keeps the curve rising. */
function slopeAt(knots: readonly Knot[], i: number): number {
  const secant = (j: number): number | undefined => {
    const [from, to] = [knots[j], knots[j + 1]];
    return from && to && (to.y - from.y) / (to.l - from.l);
  };
  const [left, right] = [secant(i - 1), secant(i)];
  const flatter = Math.min(left ?? Number.POSITIVE_INFINITY, right ?? Number.POSITIVE_INFINITY);
  const middle = Math.min(Math.max(i, 1), knots.length - 2);
  const [p, q, r, here] = [knots[middle - 1], knots[middle], knots[middle + 1], knots[i]];
  if (!p || !q || !r || !here) return flatter;
  const { b, c } = lawThrough(p.l, p.y, q.l, q.y, r.l, r.y);
  const limited = limitSlope(b + 3 * c * here.l * here.l, left, right);
  return limited > 0 ? limited : flatter;
}

/** ln R between two knots: Newton's method, kept inside the bracket by halving. */
function invert(low: Knot, lowSlope: number, high: Knot, highSlope: number, y: number): number {
  let from = low.l;
  let to = high.l;
  let l = from + ((to - from) * (y - low.y)) / (high.y - low.y);
  for (let round = 0; round < 100; round++) {
    const excess = cubicValue(l, low.l, low.y, lowSlope, high.l, high.y, highSlope) - y;
    if (excess > 0) to = l;
    else from = l;
    const wanted = l - excess / cubicSlope(l, low.l, low.y, lowSlope, high.l, high.y, highSlope);
    const next = wanted >= from && wanted <= to ? wanted : (from + to) / 2;
    if (Math.abs(next - l) <= 1e-15 * Math.max(1, Math.abs(l))) return next;
    l = next;
  }
  return l;
}
