import type { NewtonSystem } from "../kernel/newton-system";

/** One solution: high and low parts as in Iterate. */
interface Point {
  readonly high: Float64Array;
  readonly low: Float64Array;
}

/** Solutions gone by, and a polynomial through the last three of them as the guess for the next one. */
export interface Predictor {
  /** The last accepted solution. */
  readonly base: Point;
  /** Takes the system's iterate for the last accepted solution, with nothing before it to rely on. */
  restart(): void;
  /** Writes the guess for a stage into the system's iterate. */
  predict(stage: number, stepSeconds: number): void;
  /** Keeps the system's iterate as the solution of a stage. */
  keep(stage: number): void;
  /** Makes the last stage the last accepted solution; the step was so long. */
  accept(stepSeconds: number): void;
  /** Puts the system's iterate back to the last accepted solution. */
  recall(): void;
}

/** `nodes`: times of the stages as parts of a step, that of the start first. */
export function createPredictor({ x }: NewtonSystem, nodes: readonly number[]): Predictor {
  const { length } = x.high;
  const point = (): Point => ({ high: new Float64Array(length), low: new Float64Array(length) });
  const last = nodes.length - 1;
  /** Stage 0 is the base. */
  const stages = nodes.map(point);
  /** Stage last − 1 of the step before, and the base before that. */
  const before = [point(), point()];
  let hasPast = false;
  let pastSeconds = 0;

  const copy = (from: Point, to: Point): void => {
    const { high, low } = to;
    // A loop, because `set` costs more than it does on arrays as short as most.
    for (let i = 0; i < length; i++) {
      high[i] = from.high[i];
      low[i] = from.low[i];
    }
  };
  /** Lagrange's polynomial through `count` of the points a, b, c at times ta, tb, tc, at time 0. */
  const extrapolate = (
    a: Point,
    ta: number,
    b: Point,
    tb: number,
    c: Point,
    tc: number,
    count: number,
  ): void => {
    const { high, low } = x;
    if (count === 1) {
      copy(a, x);
      return;
    }
    const isThree = count > 2;
    const fa = (tb / (tb - ta)) * (isThree ? tc / (tc - ta) : 1);
    const fb = (ta / (ta - tb)) * (isThree ? tc / (tc - tb) : 1);
    const fc = isThree ? (ta / (ta - tc)) * (tb / (tb - tc)) : 0;
    const ha = a.high;
    const hb = b.high;
    const hc = c.high;
    for (let i = 0; i < length; i++) {
      high[i] = fa * ha[i] + fb * hb[i] + fc * hc[i];
      low[i] = 0;
    }
  };

  return {
    get base() {
      return stages[0];
    },
    restart() {
      copy(x, stages[0]);
      hasPast = false;
    },
    predict(stage: number, stepSeconds: number) {
      const t = nodes[stage] * stepSeconds;
      const interior = before[0];
      const older = before[1];
      const ti = (nodes[last - 1] - 1) * pastSeconds - t;
      if (stage === 1) {
        extrapolate(stages[0], -t, interior, ti, older, -pastSeconds - t, hasPast ? 3 : 1);
        return;
      }
      const t1 = nodes[stage - 1] * stepSeconds - t;
      if (stage === 2) extrapolate(stages[1], t1, stages[0], -t, interior, ti, hasPast ? 3 : 2);
      else
        extrapolate(
          stages[stage - 1],
          t1,
          stages[stage - 2],
          nodes[stage - 2] * stepSeconds - t,
          stages[0],
          -t,
          3,
        );
    },
    keep(stage: number) {
      copy(x, stages[stage]);
    },
    accept(stepSeconds: number) {
      // The arrays change their roles, nothing is copied.
      const [interior, older] = before;
      before[1] = stages[0];
      stages[0] = stages[last];
      stages[last] = older;
      before[0] = stages[last - 1];
      stages[last - 1] = interior;
      hasPast = true;
      pastSeconds = stepSeconds;
    },
    recall() {
      copy(stages[0], x);
    },
  };
}
