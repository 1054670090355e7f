/**
 * Principal branch of Lambert's W, w·e^w = x, for x > 0, by Halley's iteration.
 * Source: R. M. Corless et al., Adv. Comput. Math. 5 (1996) 329, eq. 5.9.
 */
export function lambertW(x: number): number {
  let w = x > 3 ? Math.log(x) - Math.log(Math.log(x)) : x / (1 + x);
  for (let i = 0; i < 50; i++) {
    const power = Math.exp(w);
    const excess = w * power - x;
    const step = excess / (power * (w + 1) - ((w + 2) * excess) / (2 * w + 2));
    w -= step;
    if (Math.abs(step) <= 1e-16 * Math.abs(w)) break;
  }
  return w;
}
