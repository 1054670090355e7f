const kelvin = 273.15;

type Point = readonly [number, number];

/**
 * Resistance of a thermistor, Ω, at a temperature, °C, from a table of °C and Ω in any order.
 *
 * Between points, and beyond the outermost, ln R follows 1/T: with three or more points the Steinhart–Hart law
 * 1/T = A + B·ln R + C·(ln R)³ through the two neighbours and the next nearest point; with two points, or where three
 * points bend so that the law would turn back on itself, the straight beta law through the two neighbours.
 */
export function thermistorOhms(table: readonly Point[], celsius: number): number {
  const points = [...table].sort((left, right) => left[0] - right[0]);
  const found = points.findIndex(([temperature]) => temperature >= celsius);
  const upper = Math.min(points.length - 1, Math.max(1, found === -1 ? points.length - 1 : found));
  const low = points[upper - 1] ?? [0, 1];
  const high = points[upper] ?? low;
  const inverse = 1 / Math.max(1, celsius + kelvin);
  const third = nearest(points, upper, celsius);
  const curved = third && steinhartHart([low, high, third], inverse);
  return curved ?? betaLaw(low, high, inverse);
}

/** The third point of a fit: the next one on the side nearer to the temperature asked for. */
function nearest(points: readonly Point[], upper: number, celsius: number): Point | undefined {
  const below = points[upper - 2];
  const above = points[upper + 1];
  if (!below || !above) return below ?? above;
  return celsius - below[0] < above[0] - celsius ? below : above;
}

function betaLaw([t1, r1]: Point, [t2, r2]: Point, inverse: number): number {
  if (t1 === t2) return r1;
  const share = (inverse - 1 / (t1 + kelvin)) / (1 / (t2 + kelvin) - 1 / (t1 + kelvin));
  return r1 * (r2 / r1) ** share;
}

/** Solves the three-point law for R; `undefined` where it does not rise steadily with ln R. */
function steinhartHart(points: readonly [Point, Point, Point], inverse: number): number | undefined {
  const [l1, l2, l3] = points.map(([, ohms]) => Math.log(ohms)) as [number, number, number];
  const [y1, y2, y3] = points.map(([temperature]) => 1 / (temperature + kelvin)) as [number, number, number];
  const slope2 = (y2 - y1) / (l2 - l1);
  const slope3 = (y3 - y1) / (l3 - l1);
  const c = (slope3 - slope2) / (l3 - l2) / (l1 + l2 + l3);
  const b = slope2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
  const a = y1 - (b + l1 * l1 * c) * l1;
  let logarithm = l1 + (inverse - y1) / slope2;
  for (let round = 0; round < 30; round++) {
    const rise = b + 3 * c * logarithm * logarithm;
    if (!(rise > 0)) return undefined;
    const step = (a + b * logarithm + c * logarithm ** 3 - inverse) / rise;
    logarithm -= step;
    if (Math.abs(step) < 1e-13) return Math.exp(logarithm);
  }
  return undefined;
}
