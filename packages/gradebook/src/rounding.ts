/**
 * Percentages are kept in full and rounded once, when they are shown: to one decimal, halves upwards. The value is
 * first cut to twelve digits, so that 82.25, which arithmetic may leave as 82.24999999999999, is shown as 82.3.
 */
export function toShown(percent: number): number {
  return Math.floor(Number((percent * 10).toPrecision(12)) + 0.5) / 10;
}
