/** CPU seconds of this process spent in `run`, all its threads: a busy machine stretches the clock, not this. */
export function cpuSeconds(run: () => void): number {
  const before = process.cpuUsage();
  run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** The same for what has to be waited for, while nothing else runs in this process. */
export async function cpuSecondsOf(run: () => Promise<void>): Promise<number> {
  const before = process.cpuUsage();
  await run();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}
