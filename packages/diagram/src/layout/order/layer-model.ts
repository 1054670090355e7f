import type { Draft, DraftNode } from "../draft";
import type { Shape } from "../shape";

/** A piece of a line between two neighbouring layers. */
export interface Segment {
  readonly upper: Item;
  readonly lower: Item;
  /** The how-manieth it is, from the left, among those that leave its upper layer downwards. */
  upperRank: number;
  /** The same among those that enter its lower layer. */
  lowerRank: number;
  /** True while it is taken out, with its chain, to be set in elsewhere. */
  isTaken: boolean;
  /** How many of those that are not taken arrive left of it. */
  arrival: number;
}

/** Places on one side of an item that stay together: the cavities of a connector, or one place alone. */
export interface PlaceGroup {
  places: Place[];
  /** False where the symbol itself says in which order its terminals stand. */
  readonly isFree: boolean;
}

/** A slot of a node, or the way through a layer that a long line takes. */
export interface Place {
  readonly key: string;
  readonly segments: Segment[];
}

/** What stands in a layer: a node, or a long line on its way through. */
export interface Item {
  readonly node?: DraftNode;
  /** Of a long line. */
  readonly line?: string;
  readonly layer: number;
  top: PlaceGroup[];
  bottom: PlaceGroup[];
  /** The pieces of `top` and `bottom` in their order; `gather` brings them up to date. */
  above: readonly Segment[];
  below: readonly Segment[];
  /** False when the groups of a side keep their order. */
  readonly isFree: boolean;
  /** Neighbours of the same family are drawn as one: the cavities of a connector, the pieces of a bar. */
  readonly family?: string;
}

export interface LayerModel {
  layers: Item[][];
  byLine: ReadonlyMap<string, readonly Item[]>;
  /** Raised with every change of a layer. */
  readonly versions: number[];
}

const keepsOrder = (node: DraftNode) => node.kind === "component" && node.component.kind === "relay";

function groupsOf(node: DraftNode, shape: Shape, side: "top" | "bottom"): PlaceGroup[] {
  const isFree = !keepsOrder(node);
  const groups: PlaceGroup[] = [];
  const byConnector = new Map<string, PlaceGroup>();
  for (const slot of [...shape.slots].sort((a, b) => a.x - b.x)) {
    if (slot.side !== side) continue;
    const place: Place = { key: slot.key, segments: [] };
    const known = slot.connector === undefined ? undefined : byConnector.get(slot.connector);
    if (known !== undefined) {
      known.places.push(place);
      continue;
    }
    const group = { places: [place], isFree };
    groups.push(group);
    if (slot.connector !== undefined) byConnector.set(slot.connector, group);
  }
  return groups;
}

const familyOf = (node: DraftNode) =>
  node.kind === "inline"
    ? `${node.connector} ${node.slots[0]?.face ?? ""}`
    : node.kind === "rail"
      ? node.id.split("#")[0]
      : undefined;

function itemOf(node: DraftNode, shape: Shape, layer: number): Item {
  const family = familyOf(node);
  return {
    node,
    layer,
    top: groupsOf(node, shape, "top"),
    bottom: groupsOf(node, shape, "bottom"),
    above: [],
    below: [],
    isFree: !keepsOrder(node),
    ...(family === undefined ? {} : { family }),
  };
}

/**
 * The layers of a drawing, top down, with every line cut into pieces from layer to layer. `layerOf` numbers the nodes
 * from 0; within a layer the nodes stand in the order of the draft until they are ordered.
 */
export function buildLayers(
  draft: Draft,
  shapes: ReadonlyMap<string, Shape>,
  layerOf: ReadonlyMap<string, number>,
): LayerModel {
  const layers: Item[][] = [];
  const items = new Map<string, Item>();
  const add = (item: Item) => {
    let row = layers[item.layer];
    while (row === undefined) {
      layers.push([]);
      row = layers[item.layer];
    }
    row.push(item);
    return item;
  };
  for (const node of draft.nodes) {
    const layer = layerOf.get(node.id);
    const shape = shapes.get(node.id);
    if (layer === undefined || shape === undefined) throw new Error(`${node.id} is in no layer`);
    items.set(node.id, add(itemOf(node, shape, layer)));
  }
  const byLine = new Map<string, readonly Item[]>();
  const placeOf = (item: Item, key: string) => {
    const place = [...item.top, ...item.bottom]
      .flatMap(({ places }) => places)
      .find((each) => each.key === key);
    if (place === undefined) throw new Error(`${key} is no place`);
    return place;
  };
  for (const line of draft.lines) {
    const [upper, lower] = [items.get(line.upper.node), items.get(line.lower.node)];
    if (upper === undefined || lower === undefined) throw new Error(`${line.id} hangs on nothing`);
    // A line against the stream is left to the layout engine, which leads it around.
    if (upper.layer >= lower.layer) continue;
    const way: Item[] = [upper];
    let from: { item: Item; place: Place } = { item: upper, place: placeOf(upper, line.upper.slot) };
    for (let layer = upper.layer + 1; layer <= lower.layer; layer += 1) {
      const item =
        layer === lower.layer
          ? lower
          : add({
              line: line.id,
              layer,
              top: [{ places: [{ key: line.id, segments: [] }], isFree: false }],
              bottom: [{ places: [{ key: line.id, segments: [] }], isFree: false }],
              above: [],
              below: [],
              isFree: false,
            });
      const segment: Segment = {
        upper: from.item,
        lower: item,
        upperRank: 0,
        lowerRank: 0,
        isTaken: false,
        arrival: 0,
      };
      from.place.segments.push(segment);
      const entry = layer === lower.layer ? placeOf(lower, line.lower.slot) : firstPlace(item.top);
      entry.segments.push(segment);
      from = { item, place: layer === lower.layer ? entry : firstPlace(item.bottom) };
      way.push(item);
    }
    byLine.set(line.id, way);
  }
  return { layers, byLine, versions: layers.map(() => 0) };
}

function firstPlace(groups: readonly PlaceGroup[]): Place {
  const place = groups[0]?.places[0];
  if (place === undefined) throw new Error("a line on its way has no place");
  return place;
}

const segmentsOf = (groups: readonly PlaceGroup[]): readonly Segment[] =>
  groups.flatMap(({ places }) => places.flatMap(({ segments }) => segments));

/** To be called when the places of an item have changed their order. */
export function gather(item: Item): void {
  item.above = segmentsOf(item.top);
  item.below = segmentsOf(item.bottom);
}

/** Numbers the pieces that end in a layer; to be called when its order has changed. */
export function rankLayer(model: LayerModel, layer: number): void {
  let [entering, leaving] = [0, 0];
  for (const { above, below } of model.layers[layer] ?? []) {
    for (const segment of above) segment.lowerRank = entering++;
    for (const segment of below) segment.upperRank = leaving++;
  }
  model.versions[layer] = (model.versions[layer] ?? 0) + 1;
}

/** Grows whenever one of the layers from `first` to `last` has changed. */
export function versionOf({ versions }: LayerModel, first: number, last: number): number {
  let sum = 0;
  for (let layer = Math.max(0, first); layer <= last; layer += 1) sum += versions[layer] ?? 0;
  return sum;
}
