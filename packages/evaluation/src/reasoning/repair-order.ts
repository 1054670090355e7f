/** A repair that cures with chance `share` and takes `cost` (money or minutes), 0 or more. */
export interface Repair {
  readonly share: number;
  readonly cost: number;
}

/**
 * The order that costs least on average when exactly one thing is wrong and one sees after each repair whether it was
 * it: by share over cost, greatest first (Kadane and Simon 1977; Heckerman, Breese and Rommelse 1995). Equal ones keep
 * their order.
 */
export const repairOrder = <Item extends Repair>(repairs: readonly Item[]): Item[] =>
  [...repairs].sort((a, b) => b.share * a.cost - a.share * b.cost);

/** Average cost of repairs done in this order until the car is cured: Σ cost · share not cured before it. */
export function expectedRepairCost(order: readonly Repair[]): number {
  let uncured = order.reduce((sum, { share }) => sum + share, 0);
  let cost = 0;
  for (const repair of order) {
    cost += repair.cost * uncured;
    uncured -= repair.share;
  }
  return cost;
}
