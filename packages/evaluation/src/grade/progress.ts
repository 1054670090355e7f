/**
 * Work in small pieces: yields how much of the present stage is done, 0 … 1, between the pieces, and returns its result.
 * The pieces do not depend on when they are asked for, so a caller may do other things in between.
 */
export type Steps<Result> = Generator<number, Result, void>;

/** Does all the pieces at once. */
export function finish<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same pieces, their progress counted as the stretch `from` … `to` of the whole. */
export function* stage<Result>(steps: Steps<Result>, from: number, to: number): Steps<Result> {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    yield from + (to - from) * step.value;
  }
}
