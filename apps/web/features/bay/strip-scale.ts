/**
 * Ends of the strip's scale, in the readings' own unit. Zero is always on it, so that a wobble of one count between two
 * equal readings does not fill the strip.
 */
export function stripScale(values: readonly number[]): { readonly low: number; readonly high: number } {
  const low = Math.min(0, ...values);
  const high = Math.max(0, ...values);
  return { low, high: Math.max(high, low + 1e-3) };
}
