import type { Pattern } from "./patterns";
import type { Quadrature } from "./quadrature";
import { add, type Matrix, zeros } from "./symmetric";

/**
 * One vector for all items: slopes first (one a for all, or one an item), then an intercept dᵢ an item;
 * P(right | θ) = 1/(1 + e^−(aᵢθ + dᵢ)). The intercept keeps the likelihood smooth where a slope is small.
 */
export interface ParameterLayout {
  readonly items: number;
  readonly commonSlope: boolean;
}

export function parameterCount({ items, commonSlope }: ParameterLayout): number {
  return (commonSlope ? 1 : items) + items;
}

export function slopeAt({ commonSlope }: ParameterLayout, item: number): number {
  return commonSlope ? 0 : item;
}

export function interceptAt({ items, commonSlope }: ParameterLayout, item: number): number {
  return (commonSlope ? 1 : items) + item;
}

export interface Expectation {
  /** Natural logarithm of the marginal likelihood of all patterns. */
  readonly logLikelihood: number;
  /** Expected attempts at an item by learners of a point's ability, and expected right answers: items × points. */
  readonly tried: Matrix;
  readonly right: Matrix;
}

/** log P(right) and log P(wrong) for items × points. */
function logChances(parameters: readonly number[], layout: ParameterLayout, { points }: Quadrature) {
  const logRight: number[][] = [];
  const logWrong: number[][] = [];
  for (let item = 0; item < layout.items; item += 1) {
    const slope = parameters[slopeAt(layout, item)] ?? 0;
    const intercept = parameters[interceptAt(layout, item)] ?? 0;
    const logits = points.map((point) => slope * point + intercept);
    logRight.push(logits.map((logit) => -softplus(-logit)));
    logWrong.push(logits.map((logit) => -softplus(logit)));
  }
  return { logRight, logWrong };
}

/** ln(1 + eˣ) without overflow. */
function softplus(x: number): number {
  return Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x)));
}

/** The posterior weight of each point for each pattern, and each pattern's log marginal likelihood. */
export function posteriors(
  patterns: readonly Pattern[],
  parameters: readonly number[],
  layout: ParameterLayout,
  quadrature: Quadrature,
): readonly { readonly weights: readonly number[]; readonly logLikelihood: number }[] {
  const { logRight, logWrong } = logChances(parameters, layout, quadrature);
  const logWeights = quadrature.weights.map(Math.log);
  return patterns.map(({ answers }) => {
    const logs = [...logWeights];
    for (const [item, answer] of answers.entries()) {
      if (answer === null) continue;
      const chances = (answer === 1 ? logRight : logWrong)[item] ?? [];
      for (let point = 0; point < logs.length; point += 1)
        logs[point] = (logs[point] ?? 0) + (chances[point] ?? 0);
    }
    const top = Math.max(...logs);
    const shares = logs.map((log) => Math.exp(log - top));
    const total = shares.reduce((all, one) => all + one, 0);
    return { weights: shares.map((one) => one / total), logLikelihood: top + Math.log(total) };
  });
}

/** The E step of Bock and Aitkin: what the answers would look like if abilities were known. */
export function expectation(
  patterns: readonly Pattern[],
  parameters: readonly number[],
  layout: ParameterLayout,
  quadrature: Quadrature,
): Expectation {
  const blank = () =>
    Array.from({ length: layout.items }, () => new Array<number>(quadrature.points.length).fill(0));
  const tried = blank();
  const right = blank();
  let logLikelihood = 0;
  for (const [index, posterior] of posteriors(patterns, parameters, layout, quadrature).entries()) {
    const pattern = patterns[index];
    if (pattern === undefined) continue;
    logLikelihood += pattern.count * posterior.logLikelihood;
    for (const [item, answer] of pattern.answers.entries()) {
      if (answer === null) continue;
      addTimes(tried[item], posterior.weights, pattern.count);
      if (answer === 1) addTimes(right[item], posterior.weights, pattern.count);
    }
  }
  return { logLikelihood, tried, right };
}

/** sums += count · weights, entry by entry; the innermost loop of every fit. */
function addTimes(sums: number[] | undefined, weights: readonly number[], count: number): void {
  if (sums === undefined) throw new RangeError("A pattern has more answers than there are items.");
  for (let point = 0; point < weights.length; point += 1) {
    sums[point] = (sums[point] ?? 0) + count * (weights[point] ?? 0);
  }
}

/**
 * Gradient and information of the expected complete log-likelihood. At the parameters the expectation was taken with, the
 * gradient is that of the marginal log-likelihood as well (Fisher's identity).
 */
export function completeDerivatives(
  { tried, right }: Expectation,
  parameters: readonly number[],
  layout: ParameterLayout,
  { points }: Quadrature,
): { readonly gradient: number[]; readonly information: Matrix } {
  const size = parameterCount(layout);
  const gradient = new Array<number>(size).fill(0);
  const information = zeros(size);
  for (let item = 0; item < layout.items; item += 1) {
    const slope = slopeAt(layout, item);
    const intercept = interceptAt(layout, item);
    for (const [index, point] of points.entries()) {
      const logit = (parameters[slope] ?? 0) * point + (parameters[intercept] ?? 0);
      const chance = 1 / (1 + Math.exp(-logit));
      const attempts = tried[item]?.[index] ?? 0;
      const surplus = (right[item]?.[index] ?? 0) - attempts * chance;
      const weight = attempts * chance * (1 - chance);
      gradient[slope] = (gradient[slope] ?? 0) + surplus * point;
      gradient[intercept] = (gradient[intercept] ?? 0) + surplus;
      add(information, slope, slope, weight * point * point);
      add(information, slope, intercept, weight * point);
      add(information, intercept, slope, weight * point);
      add(information, intercept, intercept, weight);
    }
  }
  return { gradient, information };
}
