/**
 * Where to test next in a line of places, one of which is at fault: after how many of them, so that the shares before
 * and behind are most nearly equal. 1 … n − 1; the earlier one of two as good. Throws a RangeError below two places.
 */
export function halfSplit(shares: readonly number[]): number {
  if (shares.length < 2) throw new RangeError("one place cannot be split");
  const total = shares.reduce((sum, share) => sum + share, 0);
  let before = 0;
  let best = { after: 1, apart: Number.POSITIVE_INFINITY };
  for (const [index, share] of shares.slice(0, -1).entries()) {
    before += share;
    const apart = Math.abs(total - 2 * before);
    if (apart < best.apart) best = { after: index + 1, apart };
  }
  return best.after;
}
