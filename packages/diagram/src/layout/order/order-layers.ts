import {
  type Item,
  type LayerModel,
  type PlaceGroup,
  rankLayer,
  type Segment,
  segmentsOfSide,
} from "./layer-model";
import { type Chain, chainsOf, reinsertChain } from "./reinsert-chain";
import { kin, siftLayer, siftPlaces } from "./sift";

/** Crossings between the pieces that leave a layer. */
function crossingsBelow(items: readonly Item[]): number {
  const segments: readonly Segment[] = items.flatMap((item) => segmentsOfSide(item.bottom));
  let crossings = 0;
  segments.forEach((one, index) => {
    for (let other = index + 1; other < segments.length; other += 1) {
      if (one.lowerRank > (segments[other]?.lowerRank ?? 0)) crossings += 1;
    }
  });
  return crossings;
}

/** Crossings, less what neighbours of one family are worth. */
export function costOf({ layers }: LayerModel): number {
  return layers.reduce(
    (sum, row) =>
      sum + crossingsBelow(row) - row.reduce((bonds, item, index) => bonds + kin(row[index - 1], item), 0),
    0,
  );
}

/** Everything in its best place as the rest stands, until nothing moves any more. */
function settle(model: LayerModel, chains: readonly Chain[]): number {
  let cost = costOf(model);
  for (let turn = 0; turn < 12; turn += 1) {
    for (const chain of chains) {
      reinsertChain(model, chain);
      for (const end of [chain.entry?.upper, chain.exit?.lower])
        if (end !== undefined) siftPlaces(model, end);
    }
    for (let layer = 0; layer < model.layers.length; layer += 1) {
      siftLayer(model, layer);
      for (const item of model.layers[layer] ?? []) if (item.node !== undefined) siftPlaces(model, item);
    }
    const next = costOf(model);
    if (next >= cost - 1e-9) return next;
    cost = next;
  }
  return cost;
}

interface Snapshot {
  readonly layers: readonly (readonly Item[])[];
  readonly sides: readonly {
    readonly item: Item;
    readonly top: PlaceGroup[];
    readonly bottom: PlaceGroup[];
  }[];
  readonly places: readonly { readonly group: PlaceGroup; readonly places: PlaceGroup["places"] }[];
}

function remember({ layers }: LayerModel): Snapshot {
  const items = layers.flat().filter(({ node }) => node !== undefined);
  return {
    layers: layers.map((row) => [...row]),
    sides: items.map((item) => ({ item, top: item.top, bottom: item.bottom })),
    places: items
      .flatMap(({ top, bottom }) => [...top, ...bottom])
      .map((group) => ({ group, places: group.places })),
  };
}

function restore(model: LayerModel, snapshot: Snapshot): void {
  model.layers = snapshot.layers.map((row) => [...row]);
  for (const { item, top, bottom } of snapshot.sides) [item.top, item.bottom] = [top, bottom];
  for (const { group, places } of snapshot.places) group.places = places;
  for (const row of model.layers) rankLayer(row);
}

/** The same numbers on every machine: a linear congruential generator (Numerical Recipes, "quick and dirty"). */
function numbers(): (below: number) => number {
  let state = 1;
  return (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

/** Moves one item along its layer, or turns round the places of one, by chance. */
function shakeOnce(model: LayerModel, draw: (below: number) => number): void {
  const row = model.layers[draw(model.layers.length)];
  const item = row?.[draw(row.length)];
  if (row === undefined || item === undefined) return;
  if (item.node !== undefined && draw(2) === 0) {
    const side = draw(2) === 0 ? "top" : "bottom";
    if (item.isFree) item[side] = turned(item[side], draw);
    for (const group of item[side]) if (group.isFree) group.places = turned(group.places, draw);
  } else {
    row.splice(row.indexOf(item), 1);
    row.splice(draw(row.length + 1), 0, item);
  }
  rankLayer(row);
}

/** The list cut at one place and laid together the other way round. */
function turned<T>(list: readonly T[], draw: (below: number) => number): T[] {
  const cut = draw(list.length + 1);
  return [...list.slice(cut), ...list.slice(0, cut)];
}

/**
 * Puts the items of every layer, and the places along them, into an order with few crossings: local search by moving
 * single items, places and whole chains, begun again from shaken orders `rounds` times. Starts from the order given.
 */
export function orderLayers(model: LayerModel, rounds: number): number {
  for (const row of model.layers) rankLayer(row);
  const chains = chainsOf(model);
  let best = settle(model, chains);
  let kept = remember(model);
  const draw = numbers();
  for (let round = 0; round < rounds; round += 1) {
    for (let shake = 1 + draw(4); shake > 0; shake -= 1) shakeOnce(model, draw);
    const cost = settle(model, chains);
    if (cost > best + 1e-9) restore(model, kept);
    else {
      best = cost;
      kept = remember(model);
    }
  }
  return best;
}
