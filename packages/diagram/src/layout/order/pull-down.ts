import type { Draft } from "../draft";
import { withoutEmpty } from "./relayer";

/**
 * Layers in which whatever has fewer lines above than below stands as low as those below allow: lines get shorter, and
 * what hangs on nothing above does not float at the top. Supply rails stay where they are.
 */
export function pullDown(draft: Draft, layerOf: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  const layers = new Map(layerOf);
  const lowest = Math.max(...layers.values());
  const at = (id: string) => layers.get(id) ?? 0;
  for (let hasMoved = true; hasMoved; ) {
    hasMoved = false;
    for (const { id, kind } of draft.nodes) {
      if (kind === "rail" || kind === "ground") continue;
      const above = draft.lines.filter(({ lower }) => lower.node === id);
      const below = draft.lines.filter(({ upper }) => upper.node === id);
      if (below.length === 0 || above.length >= below.length) continue;
      const room = Math.min(lowest, ...below.map(({ lower }) => at(lower.node))) - 1;
      if (room <= at(id)) continue;
      layers.set(id, room);
      hasMoved = true;
    }
  }
  return withoutEmpty(layers);
}
