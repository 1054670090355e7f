/** A small seeded generator for test networks (splitmix32 by G. Steele et al., OOPSLA 2014, in our own words). */
export interface SeededNumbers {
  /** Uniform in [0, 1). */
  next(): number;
  between(low: number, high: number): number;
  /** Log-uniform: every decade equally likely. */
  decades(low: number, high: number): number;
  integer(low: number, high: number): number;
  chance(probability: number): boolean;
}

export function seededNumbers(seed: number): SeededNumbers {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let z = state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32;
  };
  const between = (low: number, high: number) => low + (high - low) * next();
  return {
    next,
    between,
    decades: (low, high) => Math.exp(between(Math.log(low), Math.log(high))),
    integer: (low, high) => Math.floor(between(low, high + 1)),
    chance: (probability) => next() < probability,
  };
}
