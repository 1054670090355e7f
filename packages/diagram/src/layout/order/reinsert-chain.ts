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

/**
 * Crossings of a piece of a gap with all that are not taken, by how many of those lie left of it at its start and at
 * its end. One table serves one gap after the other:
 * making a new one each time costs more than filling it.
 */
export class CrossingTable {
  #cells = new Int16Array(64 * 64);
  #width = 1;

  fill(upper: readonly Item[], lower: readonly Item[]): void {
    let arrival = 0;
    for (const { above } of lower)
      for (const segment of above) if (!segment.isTaken) segment.arrival = arrival++;
    const width = arrival + 1;
    if (width * width > this.#cells.length) this.#cells = new Int16Array(2 * width * width);
    const cells = this.#cells;
    this.#width = width;
    for (let end = 0; end < width; end += 1) cells[end] = end;
    let row = width;
    for (const { below } of upper) {
      for (const segment of below) {
        if (segment.isTaken) continue;
        const arrives = segment.arrival;
        const before = row - width;
        for (let end = 0; end < width; end += 1) {
          cells[row + end] = (cells[before + end] as number) + (arrives >= end ? 1 : -1);
        }
        row += width;
      }
    }
  }

  at(start: number, end: number): number {
    return this.#cells[start * this.#width + end] as number;
  }
}

const freeOf = (segments: readonly Segment[]): number => {
  let count = 0;
  for (const { isTaken } of segments) if (!isTaken) count += 1;
  return count;
};

/** How many other pieces end left of each place where an item can be set into its layer. */
function cuts(row: readonly Item[], side: "above" | "below"): readonly number[] {
  let sum = 0;
  const found = [0];
  for (const item of row) {
    sum += freeOf(item[side]);
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
): readonly number[] {
  let before = 0;
  for (const each of layer) {
    if (each === item) break;
    before += freeOf(each[side]);
  }
  const groups = side === "above" ? item.top : item.bottom;
  const own = groups.find(({ places }) => places.some(({ segments }) => segments.includes(segment)));
  const isBar = item.isFree && groups.every(({ places }) => places.length === 1);
  const isAnywhere = isBar || own?.isFree === true;
  const along = isBar || own === undefined ? item[side] : own.places.flatMap(({ segments }) => segments);
  const stop = isAnywhere ? along[0] : segment;
  for (const each of item[side]) {
    if (each === stop) break;
    if (!each.isTaken) before += 1;
  }
  const count = isAnywhere ? freeOf(along) : 0;
  return Array.from({ length: count + 1 }, (_, index) => before + index);
}

/** What leaning sideways costs beside a crossing: a straight line reads better. */
const lean = 0.25;

function take({ items, entry }: Chain, isTaken: boolean): void {
  if (entry !== undefined) entry.isTaken = isTaken;
  for (const { below } of items) for (const segment of below) segment.isTaken = isTaken;
}

/** For every place of every layer of a chain: the least cost of coming so far, and from which place above. */
interface Ways {
  readonly costs: readonly number[];
  readonly from: readonly (readonly number[])[];
}

function findWays(
  model: LayerModel,
  chain: Chain,
  rows: readonly (readonly Item[])[],
  table: CrossingTable,
): Ways {
  const layerAt = (layer: number) => model.layers[layer] ?? [];
  const bonds = (item: Item, row: readonly Item[], place: number) =>
    kin(row[place], row[place - 1]) - kin(row[place - 1], item) - kin(item, row[place]);
  const { entry, exit } = chain;
  let costs: readonly number[] = [];
  const from: (readonly number[])[] = [];
  chain.items.forEach((item, index) => {
    const row = rows[index] ?? [];
    const above = rows[index - 1];
    const starts =
      above !== undefined
        ? cuts(above, "below")
        : entry === undefined
          ? []
          : endCuts(layerAt(entry.upper.layer), entry.upper, entry, "below");
    if (starts.length > 0) table.fill(layerAt(item.layer - 1), layerAt(item.layer));
    const ends = cuts(row, "above");
    const next: number[] = [];
    const way: number[] = [];
    for (let place = 0; place < ends.length; place += 1) {
      const end = ends[place] as number;
      let [best, chosen] = [starts.length === 0 ? 0 : Number.POSITIVE_INFINITY, 0];
      for (let other = 0; other < starts.length; other += 1) {
        let cost = (costs[other] ?? 0) + table.at(starts[other] as number, end);
        if (cost >= best) continue;
        if (above !== undefined) cost += lean * Math.abs(place / ends.length - other / starts.length);
        if (cost < best - 1e-9) [best, chosen] = [cost, other];
      }
      next.push(best + bonds(item, row, place));
      way.push(chosen);
    }
    costs = next;
    from.push(way);
  });
  const last = chain.items.at(-1);
  if (exit === undefined || last === undefined) return { costs, from };
  table.fill(layerAt(last.layer), layerAt(exit.lower.layer));
  const leaving = cuts(rows.at(-1) ?? [], "below");
  const ends = endCuts(layerAt(exit.lower.layer), exit.lower, exit, "above");
  return {
    costs: costs.map(
      (cost, place) => cost + Math.min(...ends.map((end) => table.at(leaving[place] as number, end))),
    ),
    from,
  };
}

/** True when a chain crosses nothing and has no kin to stand with: it cannot be better. */
function isClear(model: LayerModel, { items, entry }: Chain): boolean {
  if (items.some(({ family }) => family !== undefined)) return false;
  const isCrossed = (segment: Segment) =>
    (model.layers[segment.upper.layer] ?? []).some(({ below }) =>
      below.some(
        (other) =>
          other.upperRank < segment.upperRank !== other.lowerRank < segment.lowerRank && other !== segment,
      ),
    );
  return !(entry !== undefined && isCrossed(entry)) && !items.some(({ below }) => below.some(isCrossed));
}

/**
 * Takes a chain out and sets it in again where it crosses least, all its layers at once: the shortest way through the
 * places between the items that stay. True when anything moved.
 */
export function reinsertChain(model: LayerModel, chain: Chain, table: CrossingTable): boolean {
  if (isClear(model, chain)) return false;
  const own = new Set(chain.items);
  const rows = chain.items.map(({ layer }) => (model.layers[layer] ?? []).filter((each) => !own.has(each)));
  take(chain, true);
  const { costs, from } = findWays(model, chain, rows, table);
  take(chain, false);
  let place = costs.indexOf(Math.min(...costs));
  let hasMoved = false;
  for (let index = chain.items.length - 1; index >= 0; index -= 1) {
    const [item, row] = [chain.items[index], rows[index]];
    if (item === undefined || row === undefined) break;
    if (model.layers[item.layer]?.[place] !== item) {
      const next = [...row];
      next.splice(place, 0, item);
      model.layers[item.layer] = next;
      rankLayer(model, item.layer);
      hasMoved = true;
    }
    place = from[index]?.[place] ?? 0;
  }
  return hasMoved;
}
