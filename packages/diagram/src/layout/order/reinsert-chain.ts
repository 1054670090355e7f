import { type Item, type LayerModel, rankLayer, type Segment, segmentsOfSide } from "./layer-model";
import { kin } from "./sift";

/** Items one below the other that one line runs through without branching. */
export interface Chain {
  readonly items: readonly Item[];
  /** Into the first item, out of the last one; absent where the chain begins or ends in the open. */
  readonly entry?: Segment;
  readonly exit?: Segment;
}

const only = (segments: readonly Segment[]) => (segments.length === 1 ? segments[0] : undefined);

/** A fuse, a cavity, a lamp, a long line on its way. */
const isLink = (item: Item) =>
  segmentsOfSide(item.top).length <= 1 &&
  segmentsOfSide(item.bottom).length <= 1 &&
  segmentsOfSide(item.top).length + segmentsOfSide(item.bottom).length > 0;

/** Every maximal chain of the drawing. */
export function chainsOf(model: LayerModel): readonly Chain[] {
  const chains: Chain[] = [];
  for (const item of model.layers.flat()) {
    if (!isLink(item)) continue;
    const entry = only(segmentsOfSide(item.top));
    if (entry !== undefined && isLink(entry.upper)) continue;
    const items = [item];
    let exit = only(segmentsOfSide(item.bottom));
    while (exit !== undefined && isLink(exit.lower)) {
      items.push(exit.lower);
      exit = only(segmentsOfSide(exit.lower.bottom));
    }
    chains.push({
      items,
      ...(entry === undefined ? {} : { entry }),
      ...(exit === undefined ? {} : { exit }),
    });
  }
  return chains;
}

/** The other pieces of one gap: crossings of a piece that leaves after `u` of them and arrives after `v` of them. */
function crossingTable(layer: readonly Item[], own: ReadonlySet<Item>, ownSegments: ReadonlySet<Segment>) {
  const others = layer
    .flatMap((item) => (own.has(item) ? [] : segmentsOfSide(item.bottom)))
    .filter((each) => !ownSegments.has(each));
  const arrival = new Map(
    [...others].sort((a, b) => a.lowerRank - b.lowerRank).map((each, index) => [each, index]),
  );
  const count = others.length;
  const table: number[][] = [Array.from({ length: count + 1 }, (_, v) => v)];
  others.forEach((each, u) => {
    const arrives = arrival.get(each) ?? 0;
    table.push((table[u] ?? []).map((before, v) => before + (arrives >= v ? 1 : -1)));
  });
  return table;
}

/** How many foreign pieces end left of each place where an item can be set into its layer. */
function cuts(
  row: readonly Item[],
  side: "top" | "bottom",
  ownSegments: ReadonlySet<Segment>,
): readonly number[] {
  const found = [0];
  for (const item of row) {
    const foreign = segmentsOfSide(item[side]).filter((each) => !ownSegments.has(each)).length;
    found.push((found.at(-1) ?? 0) + foreign);
  }
  return found;
}

const isBar = (item: Item) =>
  item.node !== undefined && ["splice", "stud", "ground"].includes(item.node.kind);

/** Where a piece may end on an item that stays: at its slot, or anywhere along a bar. */
function endCuts(
  layer: readonly Item[],
  item: Item,
  segment: Segment,
  side: "top" | "bottom",
  own: ReadonlySet<Segment>,
) {
  const rank = (each: Segment) => (side === "top" ? each.lowerRank : each.upperRank);
  const foreign = layer.flatMap((each) => segmentsOfSide(each[side])).filter((each) => !own.has(each));
  const before = (limit: number) => foreign.filter((each) => rank(each) < limit).length;
  if (!isBar(item)) return [before(rank(segment))];
  const along = segmentsOfSide(item[side]).map(rank);
  const [first, last] = [before(Math.min(...along)), before(Math.max(...along) + 1)];
  return Array.from({ length: last - first + 1 }, (_, index) => first + index);
}

/** What leaning sideways costs beside a crossing: a straight line reads better. */
const lean = 0.25;

/**
 * Takes a chain out and sets it in again where it crosses least, all its layers at once: the shortest way through the
 * places between the items that stay. True when anything moved.
 */
export function reinsertChain(model: LayerModel, chain: Chain): boolean {
  const own = new Set(chain.items);
  const ownSegments = new Set([
    ...(chain.entry === undefined ? [] : [chain.entry]),
    ...chain.items.flatMap((item) => segmentsOfSide(item.bottom)),
  ]);
  const first = chain.items[0];
  if (first === undefined) return false;
  const rows = chain.items.map((item) => (model.layers[item.layer] ?? []).filter((each) => !own.has(each)));
  const layerAt = (layer: number) => model.layers[layer] ?? [];
  const bonds = (item: Item, row: readonly Item[], place: number) =>
    kin(row[place], row[place - 1]) - kin(row[place - 1], item) - kin(item, row[place]);

  let costs: number[] = [];
  const ways: number[][] = [];
  chain.items.forEach((item, index) => {
    const row = rows[index] ?? [];
    const entering = cuts(row, "top", ownSegments);
    const above = index === 0 ? undefined : (rows[index - 1] ?? []);
    const source = index === 0 ? chain.entry : undefined;
    const table =
      above !== undefined || source !== undefined
        ? crossingTable(layerAt(item.layer - 1), own, ownSegments)
        : [];
    const from =
      above !== undefined
        ? cuts(above, "bottom", ownSegments)
        : source === undefined
          ? []
          : endCuts(layerAt(source.upper.layer), source.upper, source, "bottom", ownSegments);
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
        const cost = (costs[other] ?? 0) + (table[start]?.[cut] ?? 0) + sideways;
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
    const table = crossingTable(layerAt(lastItem.layer), own, ownSegments);
    const leaving = cuts(rows.at(-1) ?? [], "bottom", ownSegments);
    const ends = endCuts(layerAt(exit.lower.layer), exit.lower, exit, "top", ownSegments);
    costs = costs.map(
      (cost, place) => cost + Math.min(...ends.map((end) => table[leaving[place] ?? 0]?.[end] ?? 0)),
    );
  }
  let place = costs.indexOf(Math.min(...costs));
  let hasMoved = false;
  for (let index = chain.items.length - 1; index >= 0; index -= 1) {
    const [item, row] = [chain.items[index], rows[index]];
    if (item === undefined || row === undefined) break;
    const next = [...row.slice(0, place), item, ...row.slice(place)];
    hasMoved ||= next.some((each, at) => each !== model.layers[item.layer]?.[at]);
    model.layers[item.layer] = next;
    rankLayer(next);
    place = ways[index]?.[place] ?? 0;
  }
  return hasMoved;
}
