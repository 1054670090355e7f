import type { Draft, DraftNode, Slot } from "../draft";
import type { Item, LayerModel } from "./layer-model";

type Inline = Extract<DraftNode, { kind: "inline" }>;

/** The slots of a node in the order its layer was given. */
function orderedSlots(item: Item): Slot[] {
  const { node } = item;
  if (node === undefined) return [];
  return [...item.top, ...item.bottom].flatMap(({ places }) =>
    places.flatMap(({ key }) => node.slots.find((slot) => slot.key === key) ?? []),
  );
}

/**
 * The draft in the order found: slots as their places stand, and cavities of one in-line connector that stand side by
 * side as one node. The model follows.
 */
export function mergeKin(draft: Draft, model: LayerModel): Draft {
  const into = new Map<string, string>();
  const nodes = new Map<string, DraftNode>();
  const itemOf = new Map<Item, Item>();
  model.layers = model.layers.map((row) => {
    const kept: Item[] = [];
    for (const item of row) {
      const { node } = item;
      if (node === undefined) {
        kept.push(item);
        continue;
      }
      const left = kept.at(-1);
      const neighbour = left?.node === undefined ? undefined : nodes.get(left.node.id);
      if (left !== undefined && neighbour?.kind === "inline" && left.family === item.family) {
        into.set(node.id, neighbour.id);
        itemOf.set(item, left);
        const all: Inline = { ...neighbour, slots: [...neighbour.slots, ...orderedSlots(item)] };
        nodes.set(neighbour.id, all);
        continue;
      }
      nodes.set(node.id, { ...node, slots: orderedSlots(item) });
      kept.push(item);
    }
    return kept;
  });
  model.byLine = new Map(
    [...model.byLine].map(([line, way]) => [line, way.map((item) => itemOf.get(item) ?? item)]),
  );
  const moved = (end: { readonly node: string; readonly slot: string }) => ({
    ...end,
    node: into.get(end.node) ?? end.node,
  });
  return {
    nodes: draft.nodes.flatMap((node) => nodes.get(node.id) ?? []),
    lines: draft.lines.map((line) => ({ ...line, upper: moved(line.upper), lower: moved(line.lower) })),
  };
}
