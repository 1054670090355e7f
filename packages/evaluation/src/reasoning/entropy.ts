/** Uncertainty of shares that add up to 1, in bits: −Σ p·log2 p (Shannon 1948). Shares of 0 count nothing. */
export const entropy = (shares: readonly number[]): number =>
  // Math.max because the sum of a single share of 1 is −0.
  Math.max(
    0,
    shares.reduce((sum, share) => (share > 0 ? sum - share * Math.log2(share) : sum), 0),
  );
