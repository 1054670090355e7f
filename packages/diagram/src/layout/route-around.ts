import type { Box, Position } from "../geometry";
import { segmentEntersBox } from "../quality";

interface Segment {
  readonly a: Position;
  readonly b: Position;
}

/** An end of a route; `out` is 1 when the line leaves downwards, −1 upwards. */
export interface Port extends Position {
  readonly out: 1 | -1;
}

const stub = 14;
const laneGap = 13;
const bendCost = 60;
const crossingCost = 160;
/** Routes are looked for within this distance around both ends first, then everywhere, px. */
const window = 260;

/**
 * An orthogonal route from one port to another: around the boxes, never along another line, with few corners and
 * crossings. Shortest path over the lanes beside boxes and lines. Where every way is barred, the plain route with two
 * corners.
 */
export function routeAround(
  from: Port,
  to: Port,
  boxes: readonly Box[],
  lines: readonly Segment[],
): readonly Position[] {
  const start = { x: from.x, y: from.y + from.out * stub };
  const end = { x: to.x, y: to.y + to.out * stub };
  const found =
    search(start, end, boxes, lines, window) ??
    search(start, end, boxes, lines, 100_000) ??
    plain(start, end);
  return withoutMiddles([from, ...found, to].map(({ x, y }) => ({ x, y })));
}

const plain = (start: Position, end: Position): readonly Position[] => {
  const y = Math.round((start.y + end.y) / 2);
  return [start, { x: start.x, y }, { x: end.x, y }, end];
};

/** A route without the points that lie on a straight line between their neighbours. */
export function withoutMiddles(points: readonly Position[]): readonly Position[] {
  return points.filter((point, index) => {
    const [before, after] = [points[index - 1], points[index + 1]];
    if (before === undefined || after === undefined) return true;
    return !((before.x === point.x && point.x === after.x) || (before.y === point.y && point.y === after.y));
  });
}

function lanes(
  values: readonly number[],
  fixed: readonly number[],
  low: number,
  high: number,
): readonly number[] {
  const sorted = [...new Set(values.map(Math.round))]
    .filter((value) => value >= low && value <= high && value >= 2)
    .sort((a, b) => a - b);
  const thinned: number[] = [];
  for (const value of sorted) {
    const last = thinned.at(-1);
    if ((last === undefined || value - last >= 5) && fixed.every((each) => Math.abs(each - value) >= 1))
      thinned.push(value);
  }
  return [...new Set([...thinned, ...fixed])].sort((a, b) => a - b);
}

function search(
  start: Position,
  end: Position,
  boxes: readonly Box[],
  lines: readonly Segment[],
  reach: number,
): readonly Position[] | undefined {
  const [left, right] = [Math.min(start.x, end.x) - reach, Math.max(start.x, end.x) + reach];
  const [top, foot] = [Math.min(start.y, end.y) - reach, Math.max(start.y, end.y) + reach];
  const nearBoxes = boxes.filter(
    (box) => box.x < right && box.x + box.width > left && box.y < foot && box.y + box.height > top,
  );
  const nearLines = lines.filter(
    ({ a, b }) =>
      Math.min(a.x, b.x) < right &&
      Math.max(a.x, b.x) > left &&
      Math.min(a.y, b.y) < foot &&
      Math.max(a.y, b.y) > top,
  );
  const xs = lanes(
    [
      ...nearBoxes.flatMap((box) => [box.x - laneGap, box.x + box.width + laneGap]),
      ...nearLines.filter(({ a, b }) => a.x === b.x).flatMap(({ a }) => [a.x - laneGap, a.x + laneGap]),
    ],
    [start.x, end.x],
    left,
    right,
  );
  const ys = lanes(
    [
      ...nearBoxes.flatMap((box) => [box.y - laneGap, box.y + box.height + laneGap]),
      ...nearLines.filter(({ a, b }) => a.y === b.y).flatMap(({ a }) => [a.y - laneGap, a.y + laneGap]),
    ],
    [start.y, end.y],
    top,
    foot,
  );
  const [columns, rows] = [xs.length, ys.length];
  /** Cost of the step to the right of, and downwards from, every lane crossing; Infinity where it is barred. */
  const across = stepCosts(xs, ys, true, nearBoxes, nearLines);
  const down = stepCosts(xs, ys, false, nearBoxes, nearLines);
  const cost = new Float64Array(columns * rows * 2).fill(Number.POSITIVE_INFINITY);
  const before = new Int32Array(columns * rows * 2).fill(-1);
  const first = (ys.indexOf(start.y) * columns + xs.indexOf(start.x)) * 2 + 1;
  const goal = ys.indexOf(end.y) * columns + xs.indexOf(end.x);
  const queue = new Queue();
  cost[first] = 0;
  queue.push(0, first);
  for (let state = queue.pop(); state !== undefined; state = queue.pop()) {
    const place = state >> 1;
    const isUpright = (state & 1) === 1;
    if (place === goal && isUpright) return pathTo(state, before, columns, xs, ys);
    const here = cost[state] as number;
    const [column, row] = [place % columns, Math.floor(place / columns)];
    const steps: readonly (readonly [number, boolean, number])[] = [
      ...(column + 1 < columns ? [[place + 1, false, across[place] as number] as const] : []),
      ...(column > 0 ? [[place - 1, false, across[place - 1] as number] as const] : []),
      ...(row + 1 < rows ? [[place + columns, true, down[place] as number] as const] : []),
      ...(row > 0 ? [[place - columns, true, down[place - columns] as number] as const] : []),
      [place, !isUpright, bendCost],
    ];
    for (const [next, upright, step] of steps) {
      if (step === Number.POSITIVE_INFINITY || (next !== place && upright !== isUpright)) continue;
      const key = next * 2 + (upright ? 1 : 0);
      if (here + step >= (cost[key] as number)) continue;
      cost[key] = here + step;
      before[key] = state;
      queue.push(here + step, key);
    }
  }
  return undefined;
}

function stepCosts(
  xs: readonly number[],
  ys: readonly number[],
  isAcross: boolean,
  boxes: readonly Box[],
  lines: readonly Segment[],
): Float64Array {
  const costs = new Float64Array(xs.length * ys.length);
  const along = isAcross ? xs : ys;
  const beside = isAcross ? ys : xs;
  const place = (one: number, other: number) =>
    isAcross ? other * xs.length + one : one * xs.length + other;
  beside.forEach((level, other) => {
    const [lineBoxes, parallels, crossed] = [
      boxes.filter((box) =>
        isAcross ? level > box.y && level < box.y + box.height : level > box.x && level < box.x + box.width,
      ),
      lines.filter(({ a, b }) =>
        isAcross ? a.y === b.y && Math.abs(a.y - level) < 9 : a.x === b.x && Math.abs(a.x - level) < 9,
      ),
      lines.filter(({ a, b }) =>
        isAcross
          ? a.x === b.x && Math.min(a.y, b.y) <= level && Math.max(a.y, b.y) >= level
          : a.y === b.y && Math.min(a.x, b.x) <= level && Math.max(a.x, b.x) >= level,
      ),
    ];
    for (let one = 0; one + 1 < along.length; one += 1) {
      const [low, high] = [along[one] as number, along[one + 1] as number];
      const at = (value: number): Position => (isAcross ? { x: value, y: level } : { x: level, y: value });
      const segment = { a: at(low), b: at(high) };
      const isBarred =
        lineBoxes.some((box) => segmentEntersBox(segment, box)) ||
        parallels.some(({ a, b }) => {
          const [s, t] = isAcross ? [a.x, b.x] : [a.y, b.y];
          return Math.min(s, t) < high + 6 && Math.max(s, t) > low - 6;
        });
      const crossings = crossed.filter(({ a }) => {
        const value = isAcross ? a.x : a.y;
        return value >= low && value < high;
      }).length;
      costs[place(one, other)] = isBarred ? Number.POSITIVE_INFINITY : high - low + crossings * crossingCost;
    }
  });
  return costs;
}

function pathTo(
  last: number,
  before: Int32Array,
  columns: number,
  xs: readonly number[],
  ys: readonly number[],
): readonly Position[] {
  const points: Position[] = [];
  for (let state = last; state >= 0; state = before[state] as number) {
    const place = state >> 1;
    points.unshift({ x: xs[place % columns] as number, y: ys[Math.floor(place / columns)] as number });
  }
  return withoutMiddles(
    points.filter(({ x, y }, index) => points[index - 1]?.x !== x || points[index - 1]?.y !== y),
  );
}

/** Least cost first; a binary heap. Equal costs leave in the order of their states, so that routes never depend on chance. */
class Queue {
  readonly #heap: (readonly [number, number])[] = [];

  push(cost: number, state: number): void {
    const heap = this.#heap;
    heap.push([cost, state]);
    for (let index = heap.length - 1; index > 0; ) {
      const parent = (index - 1) >> 1;
      if (!this.#isBefore(index, parent)) break;
      this.#swap(index, parent);
      index = parent;
    }
  }

  pop(): number | undefined {
    const heap = this.#heap;
    const first = heap[0];
    const last = heap.pop();
    if (first === undefined || last === undefined) return undefined;
    if (heap.length === 0) return first[1];
    heap[0] = last;
    for (let index = 0; ; ) {
      const [left, right] = [2 * index + 1, 2 * index + 2];
      let least = index;
      if (left < heap.length && this.#isBefore(left, least)) least = left;
      if (right < heap.length && this.#isBefore(right, least)) least = right;
      if (least === index) return first[1];
      this.#swap(index, least);
      index = least;
    }
  }

  #isBefore(one: number, other: number): boolean {
    const [a, b] = [this.#heap[one], this.#heap[other]];
    if (a === undefined || b === undefined) return false;
    return a[0] < b[0] || (a[0] === b[0] && a[1] < b[1]);
  }

  #swap(one: number, other: number): void {
    const heap = this.#heap;
    const kept = heap[one];
    const given = heap[other];
    if (kept === undefined || given === undefined) return;
    heap[one] = given;
    heap[other] = kept;
  }
}
