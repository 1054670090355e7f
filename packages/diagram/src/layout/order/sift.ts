import { gather, type Item, type LayerModel, rankLayer, type Segment } from "./layer-model";

/** What two neighbours of one family are worth, in crossings. */
export const kinship = 0.35;

interface Sides {
  readonly above: readonly Segment[];
  readonly below: readonly Segment[];
}

/** How many crossings more there are with `one` left of `other` than the other way round. */
function preference(one: Sides, other: Sides): number {
  let more = 0;
  for (const a of one.above) for (const b of other.above) more += a.upperRank > b.upperRank ? 1 : -1;
  for (const a of one.below) for (const b of other.below) more += a.lowerRank > b.lowerRank ? 1 : -1;
  return more;
}

/** The order with one entry moved to where it causes fewest crossings; undefined when it stands well. */
function sifted<T>(
  list: readonly T[],
  index: number,
  sides: (entry: T) => Sides,
  bond: (left: T | undefined, right: T | undefined) => number,
): T[] | undefined {
  const entry = list[index];
  if (entry === undefined) return undefined;
  const rest = list.filter((_, other) => other !== index);
  const own = sides(entry);
  const bondAt = (place: number) => {
    const [left, right] = [rest[place - 1], rest[place]];
    return bond(left, entry) + bond(entry, right) - bond(left, right);
  };
  let best = { place: index, change: -bondAt(index) };
  const start = best.change;
  let change = 0;
  for (let place = index - 1; place >= 0; place -= 1) {
    const passed = rest[place];
    if (passed === undefined) break;
    change += preference(own, sides(passed));
    if (change - bondAt(place) < best.change - 1e-9) best = { place, change: change - bondAt(place) };
  }
  change = 0;
  for (let place = index + 1; place <= rest.length; place += 1) {
    const passed = rest[place - 1];
    if (passed === undefined) break;
    change += preference(sides(passed), own);
    if (change - bondAt(place) < best.change - 1e-9) best = { place, change: change - bondAt(place) };
  }
  if (best.change >= start - 1e-9) return undefined;
  return [...rest.slice(0, best.place), entry, ...rest.slice(best.place)];
}

export const kin = (one: Item | undefined, other: Item | undefined): number =>
  one?.family !== undefined && one.family === other?.family ? kinship : 0;
const none = () => 0;
const same = (item: Item): Sides => item;

/** Moves the items of a layer one after the other to their best place; true when one moved. */
export function siftLayer(model: LayerModel, layer: number): boolean {
  let hasMoved = false;
  for (const item of [...(model.layers[layer] ?? [])]) {
    const row = model.layers[layer] ?? [];
    const next = sifted(row, row.indexOf(item), same, kin);
    if (next === undefined) continue;
    model.layers[layer] = next;
    hasMoved = true;
  }
  if (hasMoved) rankLayer(model, layer);
  return hasMoved;
}

const nothing: readonly Segment[] = [];

/** True when no two lines on that side of an item cross next to it: nothing could be better. */
function isInOrder({ above, below }: Item, side: "top" | "bottom"): boolean {
  let last = -1;
  for (const segment of side === "top" ? above : below) {
    const rank = side === "top" ? segment.upperRank : segment.lowerRank;
    if (rank < last) return false;
    last = rank;
  }
  return true;
}

/** The same for the places along both sides of an item: cavities within their connector, connectors among each other. */
export function siftPlaces(model: LayerModel, item: Item): boolean {
  let hasMoved = false;
  for (const side of ["top", "bottom"] as const) {
    if (isInOrder(item, side)) continue;
    const sides = (list: readonly Segment[]): Sides =>
      side === "top" ? { above: list, below: nothing } : { above: nothing, below: list };
    for (const group of item[side]) {
      if (!group.isFree || group.places.length < 2) continue;
      for (const place of [...group.places]) {
        const next = sifted(group.places, group.places.indexOf(place), (each) => sides(each.segments), none);
        if (next === undefined) continue;
        group.places = next;
        hasMoved = true;
      }
    }
    if (!item.isFree || item[side].length < 2) continue;
    const pieces = new Map(
      item[side].map((group) => [group, sides(group.places.flatMap(({ segments }) => segments))]),
    );
    for (const group of [...item[side]]) {
      const ofGroup = (each: typeof group) => pieces.get(each) ?? sides(nothing);
      const next = sifted(item[side], item[side].indexOf(group), ofGroup, none);
      if (next === undefined) continue;
      item[side] = next;
      hasMoved = true;
    }
  }
  if (!hasMoved) return false;
  gather(item);
  rankLayer(model, item.layer);
  return true;
}
