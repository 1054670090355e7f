import type { Picture } from "./car-pictures";
import type { Column } from "./tests";

/**
 * How likely each outcome of a column is under each candidate. Figures are counted in steps of one standard deviation
 * (finer near zero, where the meter's last digit rules): u = sign(v)·ln(1 + r|v|/a)/r for σ(v) = a + r|v|, rounded.
 */
export interface Outcomes {
  /** Per candidate: the first outcome that can happen, and the chances from there on; null where there is no such car. */
  readonly rows: readonly (Row | null)[];
  readonly count: number;
}

export interface Row {
  readonly from: number;
  readonly chances: Float64Array;
}

/** Share of readings that are misread, spread over all outcomes. */
export const outlierShare = 0.005;
/** Chance that a word (a lamp, a code, a fuse's window) is taken down wrongly. */
const wordError = 0.005;

/** σ = a + r|v|: the meter's ±(0.5 % + 2 counts) joined with what differs between two cars of a kind. */
const spreads = { meter: { a: 0.004, r: 0.008 }, module: { a: 0.02, r: 0.02 } } as const;
/** Outcomes on each side of zero. */
const half = 900;
/** Of a normal distribution, per step of one σ. */
const kernel = [0.0062, 0.0606, 0.2417, 0.383, 0.2417, 0.0606, 0.0062];
const reach = (kernel.length - 1) / 2;

const stepOf = (value: number, { a, r }: { a: number; r: number }): number => {
  const steps = (Math.sign(value) * Math.log1p((r * Math.abs(value)) / a)) / r;
  return Math.max(-half + reach, Math.min(half - reach, Math.round(Number.isFinite(steps) ? steps : half)));
};

/** Pictures of a candidate's one or two cars. */
export type Shown = readonly (Picture | null)[];

export function outcomesOf(column: Column, shown: readonly (Shown | null)[]): Outcomes {
  return column.kind === "figure" ? figures(column, shown) : words(column, shown);
}

function figures(column: Extract<Column, { kind: "figure" }>, shown: readonly (Shown | null)[]): Outcomes {
  const spread = spreads[column.spread];
  const narrow = new Map<string, Row>();
  const rows = shown.map((pictures) => {
    const steps = (pictures ?? []).flatMap((one) =>
      one === null ? [] : [stepOf(column.value(one), spread)],
    );
    if (steps.length === 0) return null;
    const [low, high] = [Math.min(...steps), Math.max(...steps)];
    const key = `${low} ${high}`;
    const row = narrow.get(key) ?? evenBetween(low, high);
    narrow.set(key, row);
    return row;
  });
  return { rows, count: 2 * half + 1 };
}

/** Evenly between two steps, and the meter's normal distribution on top. */
function evenBetween(low: number, high: number): Row {
  const chances = new Float64Array(high - low + kernel.length);
  const each = 1 / (high - low + 1);
  for (let step = 0; step <= high - low; step++) {
    for (let offset = 0; offset < kernel.length; offset++) {
      chances[step + offset] = (chances[step + offset] ?? 0) + each * (kernel[offset] ?? 0);
    }
  }
  return { from: low - reach + half, chances };
}

function words(column: Extract<Column, { kind: "word" }>, shown: readonly (Shown | null)[]): Outcomes {
  const places = new Map<string, number>();
  const placeOf = (word: string): number => {
    const place = places.get(word) ?? places.size;
    places.set(word, place);
    return place;
  };
  const rows = shown.map((pictures) => {
    const own = (pictures ?? []).flatMap((one) => (one === null ? [] : [placeOf(column.value(one))]));
    if (own.length === 0) return null;
    const from = Math.min(...own);
    const chances = new Float64Array(Math.max(...own) - from + 1);
    for (const place of own) chances[place - from] = (chances[place - from] ?? 0) + 1 / own.length;
    return { from, chances };
  });
  return { rows, count: places.size + 1 };
}

/** Chance of what a picture shows under each candidate, misreadings included. */
export function likelihoods(column: Column, shown: readonly (Shown | null)[], seen: Picture): number[] {
  // What is seen takes part as one more candidate, so that a word nobody predicts has a place of its own.
  const { rows, count } = outcomesOf(column, [...shown, [seen]]);
  const own = rows.at(-1);
  if (!own) throw new Error("what is seen has an outcome");
  const outcome = column.kind === "figure" ? own.from + reach : own.from;
  const error = column.kind === "figure" ? outlierShare : wordError;
  return rows.slice(0, -1).map((row) => (1 - error) * chanceOf(row, outcome) + error / count);
}

const chanceOf = (row: Row | null | undefined, outcome: number): number =>
  row ? (row.chances[outcome - row.from] ?? 0) : 0;

/**
 * Bits by which the outcome of a column is expected to lower the uncertainty about the repair group: the mutual
 * information I(G;O) = H(O) − H(O|G) (Shannon). `shares` per candidate; those at 0 are passed over.
 */
export function expectedBits(
  { rows, count }: Outcomes,
  members: ReadonlyMap<string, readonly number[]>,
  shares: Float64Array,
): number {
  const together = new Float64Array(count);
  const own = new Float64Array(count);
  let conditional = 0;
  let all = 0;
  for (const indices of members.values()) {
    let share = 0;
    let [from, to] = [count, 0];
    for (const index of indices) {
      const row = rows[index];
      const weight = shares[index] ?? 0;
      if (!row || weight === 0) continue;
      share += weight;
      from = Math.min(from, row.from);
      to = Math.max(to, row.from + row.chances.length);
      for (let place = 0; place < row.chances.length; place++) {
        const at = row.from + place;
        own[at] = (own[at] ?? 0) + weight * (row.chances[place] ?? 0);
      }
    }
    all += share;
    for (let at = from; at < to; at++) {
      const joint = own[at] ?? 0;
      if (joint === 0) continue;
      conditional -= joint * Math.log2(joint / share);
      together[at] = (together[at] ?? 0) + joint;
      own[at] = 0;
    }
  }
  let entropy = 0;
  for (const joint of together) if (joint > 0) entropy -= joint * Math.log2(joint / all);
  return Math.max(0, entropy - conditional);
}
