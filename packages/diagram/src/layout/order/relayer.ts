import type { Draft } from "../draft";
import type { Item, LayerModel } from "./layer-model";

/** Layers by node, from 0 at the top. */
export type Layers = ReadonlyMap<string, number>;

/**
 * The layers with one node moved up or down; what is in its way moves along, so that every line still runs down the
 * sheet. Undefined when supply rails would have to leave the top.
 */
export function moveNode(draft: Draft, layers: Layers, id: string, by: number): Layers | undefined {
  const next = new Map(layers);
  const at = (node: string) => next.get(node) ?? 0;
  next.set(id, at(id) + by);
  const down = draft.lines.filter(
    ({ upper, lower }) => (layers.get(upper.node) ?? 0) < (layers.get(lower.node) ?? 0),
  );
  const front = [id];
  for (const node of front) {
    for (const { upper, lower } of down) {
      if (by > 0 && upper.node === node && at(lower.node) <= at(node)) {
        next.set(lower.node, at(node) + 1);
        front.push(lower.node);
      }
      if (by < 0 && lower.node === node && at(upper.node) >= at(node)) {
        next.set(upper.node, at(node) - 1);
        front.push(upper.node);
      }
    }
  }
  const kindOf = new Map(draft.nodes.map((each) => [each.id, each.kind]));
  const top = Math.min(...draft.nodes.filter(({ kind }) => kind !== "rail").map((each) => at(each.id)));
  const hasRails = draft.nodes.some(({ kind }) => kind === "rail");
  const isRailMoved = [...next].some(([node, layer]) => kindOf.get(node) === "rail" && layer !== 0);
  if (isRailMoved || top < (hasRails ? 1 : 0)) return undefined;
  // Grounds stand at the foot together.
  const foot = Math.max(
    ...draft.nodes.map((each) => at(each.id) + (each.kind === "ground" ? 0 : 1)),
    ...draft.nodes.filter(({ kind }) => kind === "ground").map((each) => at(each.id)),
  );
  for (const { id: node, kind } of draft.nodes) if (kind === "ground") next.set(node, foot);
  return withoutEmpty(next);
}

/** The same layers numbered without gaps. */
export function withoutEmpty(layers: Layers): Layers {
  const used = [...new Set(layers.values())].sort((a, b) => a - b);
  const rank = new Map(used.map((layer, index) => [layer, index]));
  return new Map([...layers].map(([id, layer]) => [id, rank.get(layer) ?? 0]));
}

/** Brings a new model into the order of an older one as far as that goes; new ways of long lines go between their ends. */
export function orderLike(model: LayerModel, older: LayerModel): void {
  const share = new Map<string, number>();
  for (const row of older.layers) {
    row.forEach((item, index) => {
      if (item.node !== undefined) share.set(item.node.id, (index + 0.5) / row.length);
    });
  }
  const shareOf = (item: Item) => (item.node === undefined ? undefined : share.get(item.node.id)) ?? 0.5;
  const wanted = new Map<Item, number>();
  for (const item of model.layers.flat()) wanted.set(item, shareOf(item));
  const position = new Map<Item, number>();
  for (const row of older.layers) {
    for (const [index, item] of row.entries()) position.set(item, (index + 0.5) / row.length);
  }
  for (const [line, way] of model.byLine) {
    const old = older.byLine.get(line) ?? [];
    way.forEach((item, index) => {
      if (item.line === undefined) return;
      const along = old[Math.round((index / (way.length - 1)) * (old.length - 1))];
      const [first, last] = [way[0], way.at(-1)];
      const between =
        first === undefined || last === undefined
          ? 0.5
          : shareOf(first) + ((shareOf(last) - shareOf(first)) * index) / (way.length - 1);
      wanted.set(item, (along === undefined ? undefined : position.get(along)) ?? between);
    });
  }
  model.layers = model.layers.map((row) =>
    [...row].sort((a, b) => (wanted.get(a) ?? 0.5) - (wanted.get(b) ?? 0.5)),
  );
  const placesOf = new Map(
    older.layers
      .flat()
      .flatMap((item) =>
        item.node === undefined
          ? []
          : [
              [
                item.node.id,
                [...item.top, ...item.bottom].flatMap(({ places }) => places.map(({ key }) => key)),
              ] as const,
            ],
      ),
  );
  for (const item of model.layers.flat()) {
    const order = item.node === undefined ? undefined : placesOf.get(item.node.id);
    if (order === undefined) continue;
    const rank = new Map(order.map((key, index) => [key, index]));
    const rankOf = (key: string | undefined) => rank.get(key ?? "") ?? 0;
    for (const group of [...item.top, ...item.bottom]) {
      group.places = [...group.places].sort((a, b) => rankOf(a.key) - rankOf(b.key));
    }
    item.top = [...item.top].sort((a, b) => rankOf(a.places[0]?.key) - rankOf(b.places[0]?.key));
    item.bottom = [...item.bottom].sort((a, b) => rankOf(a.places[0]?.key) - rankOf(b.places[0]?.key));
  }
}
