import { type Item, type LayerModel, rankLayer, type Segment } from "./layer-model";
import { kin } from "./sift";

/** Items one below the other that one line runs through without branching. */
export interface Chain {
  readonly items: readonly Item[];
  /** Into the first item, out of the last one; absent where the chain begins or ends in the open. */
  readonly entry?: Segment;
  readonly exit?: Segment;
  readonly top: number;
  readonly foot: number;
}

/** A fuse, a cavity, a lamp, a long line on its way. */
const isLink = ({ above, below }: Item) =>
  above.length <= 1 && below.length <= 1 && above.length + below.length > 0;

/** Every maximal chain of the drawing. */
export function chainsOf(model: LayerModel): readonly Chain[] {
  const chains: Chain[] = [];
  for (const item of model.layers.flat()) {
    if (!isLink(item)) continue;
    const entry = item.above[0];
    if (entry !== undefined && isLink(entry.upper)) continue;
    const items = [item];
    let [exit] = item.below;
    while (exit !== undefined && isLink(exit.lower)) {
      items.push(exit.lower);
      [exit] = exit.lower.below;
    }
    chains.push({
      items,
      top: item.layer - 1,
      foot: (items.at(-1) ?? item).layer + 1,
      ...(entry === undefined ? {} : { entry }),
      ...(exit === undefined ? {} : { exit }),
    });
  }
  return chains;
}

/** What is taken out of the drawing while a better way for it is looked for. */
interface Taken {
  readonly items: ReadonlySet<Item>;
  readonly segments: ReadonlySet<Segment>;
}

/** Crossings, by how many of the other pieces of a gap lie left of a piece at its start and at its end. */
interface CrossingTable {
  readonly at: (start: number, end: number) => number;
}

function crossingTable(layer: readonly Item[], taken: Taken): CrossingTable {
  const others: Segment[] = [];
  for (const item of layer) {
    if (taken.items.has(item)) continue;
    for (const segment of item.below) if (!taken.segments.has(segment)) others.push(segment);
  }
  const width = others.length + 1;
  const arrivals = [...others].sort((a, b) => a.lowerRank - b.lowerRank);
  const arrival = new Map(arrivals.map((each, index) => [each, index]));
  const table = new Int16Array(width * width);
  for (let end = 0; end < width; end += 1) table[end] = end;
  for (let start = 1; start < width; start += 1) {
    const arrives = arrival.get(others[start - 1] as Segment) ?? 0;
    const [here, before] = [start * width, (start - 1) * width];
    for (let end = 0; end < width; end += 1)
      table[here + end] = (table[before + end] as number) + (arrives >= end ? 1 : -1);
  }
  return { at: (start, end) => table[start * width + end] as number };
}

const foreignOf = (item: Item, side: "above" | "below", taken: Taken): number => {
  let count = 0;
  for (const segment of item[side]) if (!taken.segments.has(segment)) count += 1;
  return count;
};

/** How many other pieces end left of each place where an item can be set into its layer. */
function cuts(row: readonly Item[], side: "above" | "below", taken: Taken): readonly number[] {
  let sum = 0;
  const found = [0];
  for (const item of row) {
    sum += foreignOf(item, side, taken);
    found.push(sum);
  }
  return found;
}

/** Where a piece may end on an item that stays: anywhere along a bar or its connector, else at its slot. */
function endCuts(
  layer: readonly Item[],
  item: Item,
  segment: Segment,
  side: "above" | "below",
  taken: Taken,
): readonly number[] {
  let before = 0;
  for (const each of layer) {
    if (each === item) break;
    if (!taken.items.has(each)) before += foreignOf(each, side, taken);
  }
  const groups = side === "above" ? item.top : item.bottom;
  const own = groups.find(({ places }) => places.some(({ segments }) => segments.includes(segment)));
  const isBar = item.isFree && groups.every(({ places }) => places.length === 1);
  const along = isBar || own?.isFree !== true ? item[side] : own.places.flatMap(({ segments }) => segments);
  const isAnywhere = isBar || own?.isFree === true;
  for (const each of item[side]) {
    if (each === (isAnywhere ? along[0] : segment)) break;
    if (!taken.segments.has(each)) before += 1;
  }
  const count = isAnywhere ? along.filter((each) => !taken.segments.has(each)).length : 0;
  return Array.from({ length: count + 1 }, (_, index) => before + index);
}

/** What leaning sideways costs beside a crossing: a straight line reads better. */
const lean = 0.25;

/**
 * Takes a chain out and sets it in again where it crosses least, all its layers at once: the shortest way through the
 * places between the items that stay. True when anything moved.
 */
export function reinsertChain(model: LayerModel, chain: Chain): boolean {
  const taken: Taken = {
    items: new Set(chain.items),
    segments: new Set([
      ...(chain.entry === undefined ? [] : [chain.entry]),
      ...chain.items.flatMap((item) => item.below),
    ]),
  };
  const rows = chain.items.map((item) =>
    (model.layers[item.layer] ?? []).filter((each) => !taken.items.has(each)),
  );
  const layerAt = (layer: number) => model.layers[layer] ?? [];
  const bonds = (item: Item, row: readonly Item[], place: number) =>
    kin(row[place], row[place - 1]) - kin(row[place - 1], item) - kin(item, row[place]);

  let costs: number[] = [];
  const ways: number[][] = [];
  chain.items.forEach((item, index) => {
    const row = rows[index] ?? [];
    const entering = cuts(row, "above", taken);
    const above = index === 0 ? undefined : (rows[index - 1] ?? []);
    const source = index === 0 ? chain.entry : undefined;
    const table =
      above !== undefined || source !== undefined ? crossingTable(layerAt(item.layer - 1), taken) : undefined;
    const from =
      above !== undefined
        ? cuts(above, "below", taken)
        : source === undefined
          ? []
          : endCuts(layerAt(source.upper.layer), source.upper, source, "below", taken);
    const way: number[] = [];
    const next = entering.map((cut, place) => {
      const base = bonds(item, row, place);
      if (from.length === 0) {
        way.push(-1);
        return base;
      }
      let best = Number.POSITIVE_INFINITY;
      let chosen = 0;
      from.forEach((start, other) => {
        const sideways =
          above === undefined ? 0 : lean * Math.abs(place / (row.length + 1) - other / (above.length + 1));
        const cost = (costs[other] ?? 0) + (table?.at(start, cut) ?? 0) + sideways;
        if (cost < best - 1e-9) [best, chosen] = [cost, other];
      });
      way.push(above === undefined ? -1 : chosen);
      return best + base;
    });
    costs = next;
    ways.push(way);
  });
  const { exit } = chain;
  const lastItem = chain.items.at(-1);
  if (exit !== undefined && lastItem !== undefined) {
    const table = crossingTable(layerAt(lastItem.layer), taken);
    const leaving = cuts(rows.at(-1) ?? [], "below", taken);
    const ends = endCuts(layerAt(exit.lower.layer), exit.lower, exit, "above", taken);
    costs = costs.map(
      (cost, place) => cost + Math.min(...ends.map((end) => table.at(leaving[place] ?? 0, end))),
    );
  }
  let place = costs.indexOf(Math.min(...costs));
  let hasMoved = false;
  for (let index = chain.items.length - 1; index >= 0; index -= 1) {
    const [item, row] = [chain.items[index], rows[index]];
    if (item === undefined || row === undefined) break;
    const next = [...row.slice(0, place), item, ...row.slice(place)];
    if (next.some((each, at) => each !== model.layers[item.layer]?.[at])) {
      model.layers[item.layer] = next;
      rankLayer(model, item.layer);
      hasMoved = true;
    }
    place = ways[index]?.[place] ?? 0;
  }
  return hasMoved;
}
