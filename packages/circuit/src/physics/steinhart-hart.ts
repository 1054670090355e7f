const kelvin = 273.15;
/** Colder than this the formulas make no sense; nothing in a vehicle is. */
const leastKelvin = 1;

/**
 * 1/T = a + b·ln R + c·(ln R)³, T in kelvin, R in ohms.
 * I. S. Steinhart, S. R. Hart, Deep-Sea Research 15 (1968) 497 (from memory).
 */
export interface SteinhartHart {
  readonly a: number;
  /** Above 0. */
  readonly b: number;
  readonly c: number;
}

/** Temperature, °C, of a thermistor that has `ohms` > 0. */
export function steinhartHartCelsius({ a, b, c }: SteinhartHart, ohms: number): number {
  const logarithm = Math.log(ohms);
  return 1 / (a + b * logarithm + c * logarithm ** 3) - kelvin;
}

/** c/b below which the cubic term is nothing: it would change ln R by less than 1e-26. */
const negligibleCurve = 1e-30;

/**
 * Ohms at `celsius`: the root of the cubic in ln R on the branch where R falls as T rises. With c ≥ 0 there is exactly
 * one; with c < 0 the law turns back on itself far out, and beyond that turn the value of the turn is kept.
 */
export function steinhartHartOhms({ a, b, c }: SteinhartHart, celsius: number): number {
  const rest = a - 1 / Math.max(leastKelvin, celsius + kelvin);
  if (Math.abs(c) < negligibleCurve * b) return Math.exp(-rest / b);
  // L³ + 3m·L + 2n = 0, by the tripling formula of sinh (m > 0) or sin (m < 0).
  const m = b / (3 * c);
  const n = rest / (2 * c);
  const radius = Math.sqrt(Math.abs(m));
  const ratio = n / radius ** 3;
  const angle = m > 0 ? -Math.sinh(Math.asinh(ratio) / 3) : Math.sin(Math.asin(clampUnit(ratio)) / 3);
  return Math.exp(2 * radius * angle);
}

const clampUnit = (x: number): number => Math.min(1, Math.max(-1, x));

export type ThermistorPoint = readonly [celsius: number, ohms: number];

/** Why no law goes through three points. */
export interface FitError {
  readonly code: "bad_point" | "not_falling" | "bends_back";
  readonly message: string;
}

export type Fit =
  | { readonly ok: true; readonly value: SteinhartHart }
  | { readonly ok: false; readonly error: FitError };

/**
 * The law through three points [°C, Ω] in any order. Errors: bad_point (not finite, at or below absolute zero, or no
 * ohms above 0), not_falling (ohms do not fall as the temperature rises, or two points are the same), bends_back (the
 * law through them would turn back between them).
 */
export function fitSteinhartHart(points: readonly [ThermistorPoint, ThermistorPoint, ThermistorPoint]): Fit {
  const sorted = [...points].sort((left, right) => left[0] - right[0]);
  const bad = sorted.some(
    ([t, ohms]) => !(Number.isFinite(t) && Number.isFinite(ohms) && t > -kelvin && ohms > 0),
  );
  if (bad) return failed("bad_point", "Every point needs a temperature above −273.15 °C and ohms above 0.");
  const [y1, y2, y3] = sorted.map(([celsius]) => 1 / (celsius + kelvin)) as [number, number, number];
  const [l1, l2, l3] = sorted.map(([, ohms]) => Math.log(ohms)) as [number, number, number];
  if (!(l1 > l2 && l2 > l3 && y1 > y2 && y2 > y3)) {
    return failed("not_falling", "Ohms must fall from each temperature to the next higher one.");
  }
  const law = lawThrough(l1, y1, l2, y2, l3, y3);
  const rises = [l1, l2, l3].every((logarithm) => law.b + 3 * law.c * logarithm ** 2 > 0);
  return rises && law.b > 0
    ? { ok: true, value: law }
    : failed("bends_back", "No Steinhart–Hart law rises steadily through these three points; use a table.");
}

const failed = (code: FitError["code"], message: string): Fit => ({ ok: false, error: { code, message } });

/** The law through three pairs (ln R, 1/T) with three different logarithms; it need not be monotone. */
export function lawThrough(
  l1: number,
  y1: number,
  l2: number,
  y2: number,
  l3: number,
  y3: number,
): SteinhartHart {
  const slope2 = (y2 - y1) / (l2 - l1);
  const slope3 = (y3 - y1) / (l3 - l1);
  const c = (slope3 - slope2) / (l3 - l2) / (l1 + l2 + l3);
  const b = slope2 - c * (l1 * l1 + l1 * l2 + l2 * l2);
  return { a: y1 - (b + l1 * l1 * c) * l1, b, c };
}
