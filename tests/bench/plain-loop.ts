/** Two arrays of 8 kB each: they stay in the first-level cache. */
const length = 1024;
const x = Float64Array.from({ length }, (_, i) => 1 / (i + 1));
const y = new Float64Array(length);

/** Floating-point operations of `passes` passes of the loop below: one product, one sum. */
const plainLoopOperations = (passes: number): number => 2 * length * passes;

/** y ← y + a·x, as plainly as it can be written: what this machine's JavaScript can do at best with such a sum. */
function runPlainLoop(passes: number): number {
  for (let pass = 0; pass < passes; pass++) {
    const a = pass % 2 === 0 ? 0.5 : -0.5;
    for (let i = 0; i < length; i++) y[i] = (y[i] as number) + a * (x[i] as number);
  }
  return y[length - 1] as number;
}

/** Floating-point operations per second, the best of some: a turn that was disturbed says nothing of the machine. */
export function plainLoopSpeed(): number {
  const passes = 2000;
  let best = 0;
  for (let turn = 0; turn < 25; turn++) {
    const start = performance.now();
    runPlainLoop(passes);
    best = Math.max(best, plainLoopOperations(passes) / ((performance.now() - start) / 1e3));
  }
  return best;
}
