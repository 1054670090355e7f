import type { AttemptEvent } from "../event";

/** Where a test point meets the harness: `X2.5:h` → `X2.5`, `X7.2:b` → `X7.2/b`, `XE1:ring` → `XE1`; others unchanged. */
export function harnessEnd(point: string): string {
  const [owner = point, side] = point.split(":");
  if (side === "b" && owner.includes(".")) return `${owner}/b`;
  if ((side === "h" && owner.includes(".")) || side === "ring") return owner;
  return point;
}

/** The ends of the harness a lead has stood on for a reading. */
export const probedEnds = (events: readonly AttemptEvent[]): ReadonlySet<string> =>
  new Set(
    events.flatMap(({ observation }) =>
      observation.kind === "reading" ? [observation.red, observation.black].map(harnessEnd) : [],
    ),
  );
