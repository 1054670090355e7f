import { gather, type Item, type LayerModel, type PlaceGroup, rankLayer, versionOf } from "./layer-model";
import { type Chain, CrossingTable, chainsOf, reinsertChain } from "./reinsert-chain";
import { kin, siftLayer, siftPlaces } from "./sift";

/** Crossings between the pieces that leave a layer. */
function crossingsBelow(items: readonly Item[]): number {
  const arrivals: number[] = [];
  for (const { below } of items) for (const { lowerRank } of below) arrivals.push(lowerRank);
  let crossings = 0;
  for (let one = 0; one < arrivals.length; one += 1) {
    for (let other = one + 1; other < arrivals.length; other += 1) {
      if ((arrivals[one] as number) > (arrivals[other] as number)) crossings += 1;
    }
  }
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

/** The versions at which a part was last found well placed: as long as nothing around it changes, it need not be asked again. */
class Settled {
  readonly table = new CrossingTable();
  readonly #seen = new Map<object, number>();

  isSettled(part: object, version: number): boolean {
    return this.#seen.get(part) === version;
  }

  set(part: object, version: number): void {
    this.#seen.set(part, version);
  }
}

/** Everything in its best place as the rest stands, until nothing moves any more. */
function settle(model: LayerModel, chains: readonly Chain[], settled: Settled): number {
  let cost = costOf(model);
  for (let turn = 0; turn < 12; turn += 1) {
    let hasMoved = false;
    for (const chain of chains) {
      if (settled.isSettled(chain, versionOf(model, chain.top, chain.foot))) continue;
      if (reinsertChain(model, chain, settled.table)) {
        hasMoved = true;
        for (const end of [chain.entry?.upper, chain.exit?.lower])
          if (end !== undefined) siftPlaces(model, end);
      }
      settled.set(chain, versionOf(model, chain.top, chain.foot));
    }
    for (const [layer, row] of model.layers.entries()) {
      const version = () => versionOf(model, layer - 1, layer + 1);
      if (settled.isSettled(row, version())) continue;
      if (siftLayer(model, layer)) hasMoved = true;
      for (const item of row) if (item.node !== undefined && siftPlaces(model, item)) hasMoved = true;
      settled.set(model.layers[layer] ?? row, version());
    }
    if (!hasMoved) break;
    const next = costOf(model);
    // What is straighter for a line may be kinder to none: only fewer crossings are worth another turn.
    if (next >= cost - 1e-9) return next;
    cost = next;
  }
  return cost;
}

/** One layer as it stood: its items, and the places along each. */
interface KeptRow {
  readonly items: readonly Item[];
  readonly sides: readonly { readonly top: PlaceGroup[]; readonly bottom: PlaceGroup[] }[];
  readonly places: readonly (readonly [PlaceGroup, PlaceGroup["places"]])[];
}

interface Snapshot {
  readonly rows: readonly KeptRow[];
  readonly versions: readonly number[];
}

function remember({ layers, versions }: LayerModel): Snapshot {
  const rows = layers.map((row) => ({
    items: [...row],
    sides: row.map(({ top, bottom }) => ({ top, bottom })),
    places: row.flatMap(({ top, bottom }) =>
      [...top, ...bottom].map((group) => [group, group.places] as const),
    ),
  }));
  return { rows, versions: [...versions] };
}

/** Layers that have not changed since are left alone, and with them what is known of their being settled. */
function restore(model: LayerModel, { rows, versions }: Snapshot): void {
  rows.forEach(({ items, sides, places }, layer) => {
    if (versions[layer] === model.versions[layer]) return;
    model.layers[layer] = [...items];
    items.forEach((item, index) => {
      const kept = sides[index];
      if (kept !== undefined) [item.top, item.bottom] = [kept.top, kept.bottom];
    });
    for (const [group, kept] of places) group.places = kept;
    for (const item of items) gather(item);
    rankLayer(model, layer);
  });
}

/** The same numbers on every machine: a linear congruential generator (Numerical Recipes, "quick and dirty"). */
export function numbers(): (below: number) => number {
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
  gather(item);
  rankLayer(model, item.layer);
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
  for (const item of model.layers.flat()) gather(item);
  for (const layer of model.layers.keys()) rankLayer(model, layer);
  const settled = new Settled();
  const chains = chainsOf(model);
  let best = settle(model, chains, settled);
  let kept = remember(model);
  const draw = numbers();
  for (let round = 0; round < rounds; round += 1) {
    for (let shake = 1 + draw(4); shake > 0; shake -= 1) shakeOnce(model, draw);
    const cost = settle(model, chains, settled);
    if (cost > best + 1e-9) {
      restore(model, kept);
      kept = { ...kept, versions: [...model.versions] };
    } else {
      best = cost;
      kept = remember(model);
    }
  }
  return best;
}
