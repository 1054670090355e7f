import { entropy } from "./entropy";

/**
 * Bits a test takes off the uncertainty about the hypotheses, on average over its outcomes; never below 0.
 * `chances[h][o]` is the chance of outcome `o` under hypothesis `h`, each row adding up to 1; `shares[h]` add up to 1.
 * Equal to the entropy now less the expected entropy after (mutual information).
 */
export function expectedGain(shares: readonly number[], chances: readonly (readonly number[])[]): number {
  return Math.max(0, entropy(shares) - expectedEntropy(shares, chances));
}

/** Bits of uncertainty that are left after a test, on average over its outcomes; same arguments. */
export function expectedEntropy(shares: readonly number[], chances: readonly (readonly number[])[]): number {
  const outcomes = Math.max(0, ...chances.map((row) => row.length));
  let left = 0;
  for (let outcome = 0; outcome < outcomes; outcome++) {
    const joint = shares.map((share, index) => share * (chances[index]?.[outcome] ?? 0));
    const chance = joint.reduce((sum, value) => sum + value, 0);
    if (chance > 0) left += chance * entropy(joint.map((value) => value / chance));
  }
  return left;
}
