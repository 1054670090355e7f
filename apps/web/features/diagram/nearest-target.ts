export interface PlacedTarget {
  readonly key: string;
  readonly x: number;
  readonly y: number;
}

export type Direction = "up" | "down" | "left" | "right";

const ahead: Readonly<Record<Direction, readonly [number, number]>> = {
  up: [0, -1],
  down: [0, 1],
  left: [-1, 0],
  right: [1, 0],
};

/**
 * The nearest other target that lies in that direction: at most 60° off it, sideways distance counting double.
 * Undefined at the edge of the sheet.
 */
export function nearestTarget<T extends PlacedTarget>(
  targets: readonly T[],
  from: PlacedTarget,
  direction: Direction,
): T | undefined {
  const [dx, dy] = ahead[direction];
  let best: T | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  for (const target of targets) {
    if (target.key === from.key) continue;
    const along = (target.x - from.x) * dx + (target.y - from.y) * dy;
    const aside = Math.abs((target.x - from.x) * dy) + Math.abs((target.y - from.y) * dx);
    if (along <= 0 || aside > along * 1.75) continue;
    const cost = along + 2 * aside;
    if (cost < bestCost) {
      best = target;
      bestCost = cost;
    }
  }
  return best;
}
