import type { Rows } from "./recorder";
import { eachStep, integrals, type StepPolynomial, turningPoints, valueAt } from "./step-polynomials";
import type { Measures, Timing } from "./transient-circuit";

export type Columns = readonly (readonly [column: number, factor: number])[];

/** Means and extremes of a signal over a whole recording, from the polynomials of its steps. */
export function measureRows(rows: Rows, columns: Columns): Measures {
  let seconds = 0;
  let sum = 0;
  let squares = 0;
  let min = Number.POSITIVE_INFINITY;
  let max = Number.NEGATIVE_INFINITY;
  const average = meanOf(rows, columns);
  eachStep(rows, columns, (step) => {
    const length = step.to - step.from;
    // Squares of what lies beyond the average: a small ripple on a large mean keeps its digits.
    step.coefficients[0] -= average;
    const { first, second } = integrals(step);
    step.coefficients[0] += average;
    seconds += length;
    sum += length * first;
    squares += length * second;
    min = Math.min(min, step.least);
    max = Math.max(max, step.most);
    for (const s of turningPoints(step)) {
      const value = valueAt(step, s);
      if (isCredible(value, step)) {
        min = Math.min(min, value);
        max = Math.max(max, value);
      }
    }
  });
  const mean = average + sum / seconds;
  const variance = Math.max(0, squares / seconds - (sum / seconds) ** 2);
  return { average: mean, rms: Math.sqrt(mean * mean + variance), acRms: Math.sqrt(variance), min, max };
}

function meanOf(rows: Rows, columns: Columns): number {
  let seconds = 0;
  let sum = 0;
  eachStep(rows, columns, (step) => {
    seconds += step.to - step.from;
    sum += (step.to - step.from) * integrals(step).first;
  });
  return sum / seconds;
}

/** A polynomial through a kink overshoots; the top of a smooth curve stands little above its samples. */
const isCredible = (value: number, { least, most }: StepPolynomial): boolean =>
  Math.max(value - most, least - value) <= (most - least) / 8;

/**
 * Share of the recording in which the signal lies above a threshold, and how often it rises through it. The end is
 * taken to join the start, as in a period.
 */
export function timeRows(rows: Rows, columns: Columns, threshold: number): Timing {
  let above = 0;
  let seconds = 0;
  let rises = 0;
  let first: boolean | undefined;
  let was: boolean | undefined;
  const see = (isAbove: boolean): void => {
    if (isAbove && was === false) rises++;
    first ??= isAbove;
    was = isAbove;
  };
  eachStep(rows, columns, (step) => {
    const length = step.to - step.from;
    seconds += length;
    const stops = [0, ...turningPoints(step), 1];
    for (let i = 0; i + 1 < stops.length; i++) {
      const [from, to] = [stops[i], stops[i + 1]];
      const [a, b] = [valueAt(step, from) > threshold, valueAt(step, to) > threshold];
      see(a);
      see(b);
      if (a && b) above += length * (to - from);
      if (a === b) continue;
      const cross = crossing(step, from, to, threshold, a);
      above += length * (a ? cross - from : to - cross);
    }
  });
  if (first === true && was === false) rises++;
  return { duty: above / seconds, rises, hertz: rises / seconds };
}

/** Bisection on a stretch without a turning point. */
function crossing(
  step: StepPolynomial,
  from: number,
  to: number,
  threshold: number,
  startsAbove: boolean,
): number {
  let low = from;
  let high = to;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (valueAt(step, middle) > threshold === startsAbove) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
