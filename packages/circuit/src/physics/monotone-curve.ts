/**
 * A smooth curve through points with x rising: cubic between two points, straight beyond the outermost with the slope
 * it has there. Value and slope are continuous, and between two points it stays between their values.
 */
export interface MonotoneCurve {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slope: readonly number[];
}

/**
 * The curve through one point or more, x rising strictly. `ends` sets the slopes at both ends; without it they follow
 * the parabola through the three outermost points. Slopes are held to three times the flatter of both neighbouring
 * chords, which keeps every piece monotone (F. N. Fritsch, R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238, from memory).
 */
export function createMonotoneCurve(
  points: readonly (readonly [x: number, y: number])[],
  ends?: readonly [first: number, last: number],
): MonotoneCurve {
  const x = points.map(([at]) => at);
  const y = points.map(([, value]) => value);
  const slope = points.map((_, i) => {
    if (ends && i === 0) return ends[0];
    if (ends && i === points.length - 1) return ends[1];
    return limitSlope(parabolaSlope(points, i), chord(points, i - 1), chord(points, i));
  });
  return { x, y, slope };
}

type Points = readonly (readonly [number, number])[];

/** Slope of the straight line from point i to the next; undefined beyond the ends. */
function chord(points: Points, i: number): number | undefined {
  const from = points[i];
  const to = points[i + 1];
  return from && to && (to[1] - from[1]) / (to[0] - from[0]);
}

/** Slope at point i of the parabola through it and its neighbours (through the three outermost at an end). */
function parabolaSlope(points: Points, i: number): number {
  const middle = Math.min(Math.max(i, 1), points.length - 2);
  const left = chord(points, middle - 1);
  const right = chord(points, middle);
  const [before, at, after] = [points[middle - 1], points[middle], points[middle + 1]];
  if (left === undefined || right === undefined || !before || !at || !after) {
    return chord(points, 0) ?? 0;
  }
  const bend = (right - left) / (after[0] - before[0]);
  const x = points[i]?.[0] ?? 0;
  return left + bend * (2 * x - before[0] - at[0]);
}

/** `slope` held between 0 and three times the flatter neighbouring chord; 0 where the chords turn. */
export function limitSlope(slope: number, left: number | undefined, right: number | undefined): number {
  const first = left ?? right ?? 0;
  const second = right ?? first;
  if (first * second <= 0 || slope * first <= 0) return 0;
  const most = 3 * Math.min(Math.abs(first), Math.abs(second));
  return Math.sign(first) * Math.min(Math.abs(slope), most);
}

/** Value at x of the cubic from (x0, y0) with slope m0 to (x1, y1) with slope m1. */
export function cubicValue(
  x: number,
  x0: number,
  y0: number,
  m0: number,
  x1: number,
  y1: number,
  m1: number,
): number {
  const h = x1 - x0;
  const s = (x - x0) / h;
  const r = 1 - s;
  return y0 * r * r * (1 + 2 * s) + y1 * s * s * (1 + 2 * r) + h * s * r * (m0 * r - m1 * s);
}

/** Slope at x of the same cubic. */
export function cubicSlope(
  x: number,
  x0: number,
  y0: number,
  m0: number,
  x1: number,
  y1: number,
  m1: number,
): number {
  const h = x1 - x0;
  const s = (x - x0) / h;
  const r = 1 - s;
  return (6 * s * r * (y1 - y0)) / h + m0 * r * (1 - 3 * s) + m1 * s * (1 - 3 * r);
}

/** Value of the curve at any finite x. */
export function curveValue({ x, y, slope }: MonotoneCurve, at: number): number {
  const i = pieceOf(x, at);
  if (i < 0) return y[0]! + slope[0]! * (at - x[0]!);
  if (i >= x.length - 1) return y[i]! + slope[i]! * (at - x[i]!);
  return cubicValue(at, x[i]!, y[i]!, slope[i]!, x[i + 1]!, y[i + 1]!, slope[i + 1]!);
}

/** Slope of the curve at any finite x. */
export function curveSlope({ x, y, slope }: MonotoneCurve, at: number): number {
  const i = pieceOf(x, at);
  if (i < 0) return slope[0]!;
  if (i >= x.length - 1) return slope[i]!;
  return cubicSlope(at, x[i]!, y[i]!, slope[i]!, x[i + 1]!, y[i + 1]!, slope[i + 1]!);
}

/** Index of the last point at or before `at`; −1 before all. Curves have a handful of points. */
function pieceOf(x: readonly number[], at: number): number {
  let i = x.length - 1;
  while (i >= 0 && x[i]! > at) i--;
  return i;
}
