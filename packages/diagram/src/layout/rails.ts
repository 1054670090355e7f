import type { Position, Primitive, SheetReference, SheetSymbol, SheetTestPoint } from "../geometry";
import { textWidth, wrapText } from "../text-size";
import { shapeBar } from "./bar-shape";
import type { Draft, DraftNode, Slot } from "./draft";
import type { PlacedNode } from "./run-elk";
import type { Shape } from "./shape";
import { circle, line, path, text } from "./symbols/pieces";

type Rail = Extract<DraftNode, { kind: "rail" | "splice" | "ground" | "stud" }>;

/** Distance of the words from the bar's left end, and between their baselines, px. */
const lineStep = 13;
/** How far a bar reaches beyond its outer conductors, px. */
const reach = 10;

const isBattery = (node: Rail) => node.name === undefined;
/** Designator first, then what it is, in lines short enough for a bar with a single conductor. */
const nameLines = (node: Rail): readonly string[] =>
  node.name === undefined ? [`30 · ${node.owner} positive post`] : [node.owner, ...wrapText(node.name, 18)];
const feedLines = (node: Rail): readonly string[] =>
  node.title === undefined ? [] : wrapText(`fed on: ${node.title}`, 20);
/** The arrow before the words of the feed, px. */
const arrowRoom = 16;

/** A rail takes at least the width of what is written over it. */
export function shapeRail(node: Rail, slots: readonly Slot[]): Shape {
  const shape = shapeBar("", slots);
  const words = Math.max(
    ...nameLines(node).map((each) => textWidth(each, "terminal")),
    ...feedLines(node).map((each) => textWidth(each, "function") + arrowRoom),
  );
  if (isBattery(node)) return { ...shape, width: Math.max(shape.width, words + 24) };
  const placed = shape.slots.map((slot, index) => ({ ...slot, x: reach + 2 + index * 48 }));
  return { ...shape, slots: placed, width: Math.max(reach + 2 + words, (placed.at(-1)?.x ?? 0) + reach) };
}

interface Drop {
  readonly node: Rail;
  readonly start: Position;
}

/** Pieces of one bar with nothing of another between them are drawn as one bar. */
function runsOf(
  nodes: readonly PlacedNode[],
  draft: Draft,
  routes: ReadonlyMap<string, readonly Position[]>,
) {
  const drops = nodes
    .flatMap(({ node }): Drop[] =>
      node.kind !== "rail"
        ? []
        : draft.lines
            .filter((each) => each.upper.node === node.id)
            .flatMap((each) => routes.get(each.id)?.[0] ?? [])
            .map((start) => ({ node, start })),
    )
    .sort((one, other) => one.start.x - other.start.x);
  const runs: Drop[][] = [];
  for (const drop of drops) {
    const run = runs.at(-1);
    if (run?.[0]?.node.owner === drop.node.owner) run.push(drop);
    else runs.push([drop]);
  }
  return runs;
}

/** The supply rails: a battery's positive post, and bars fed elsewhere, as long as what leaves them needs. */
export function drawRails(
  nodes: readonly PlacedNode[],
  draft: Draft,
  routes: ReadonlyMap<string, readonly Position[]>,
): { readonly symbols: readonly SheetSymbol[]; readonly references: readonly SheetReference[] } {
  const runs = runsOf(nodes, draft, routes);
  const isOnly = runs.length === 1;
  const symbols: SheetSymbol[] = [];
  const references: SheetReference[] = [];
  for (const run of runs) {
    const [first, last] = [run[0], run.at(-1)];
    if (first === undefined || last === undefined) continue;
    const { node, start } = first;
    const more = isOnly ? 24 : reach;
    const [from, to] = [start.x - more, last.start.x + more];
    const feed = feedLines(node);
    const names = nameLines(node);
    const { y } = start;
    const feedTop = y - 10 - (feed.length - 1) * lineStep;
    const nameFoot = feed.length === 0 ? y - 10 : feedTop - lineStep - 1;
    const count = symbols.filter(({ designator }) => designator === node.owner).length;
    const suffix = count === 0 ? "" : ` part ${count + 1}`;
    if (node.link !== undefined && node.title !== undefined) {
      const arrowTop = feedTop - 9;
      const width = Math.max(...feed.map((each) => textWidth(each, "function"))) + arrowRoom + 6;
      references.push({
        id: `feed ${node.owner}${suffix}`,
        at: { x: from + 6, y },
        box: { x: from - 2, y: feedTop - 12, width, height: feed.length * lineStep + 5 },
        toSystem: node.link.systems[0] ?? "",
        title: node.title,
        systems: node.link.systems,
        toDesignator: node.link.designator,
        primitives: [
          path(
            `M ${from + 1} ${arrowTop + 10} L ${from + 11} ${arrowTop + 10} L ${from + 6} ${arrowTop} Z`,
            "ink",
          ),
          ...feed.map((each, index) => text(from + arrowRoom, feedTop + index * lineStep, each, "function")),
        ],
      });
    }
    symbols.push({
      id: isBattery(node) ? node.id : `${node.owner}${suffix}`,
      kind: "rail",
      designator: isBattery(node) ? "30" : node.owner,
      title: isBattery(node) ? `Supply rail at ${node.owner}` : (node.name ?? node.owner),
      partial: !isBattery(node),
      x: from,
      y,
      width: to - from,
      height: 0,
      terminals: [],
      primitives: [
        line("rail", [from, y], [to, y]),
        ...run.map((drop) => circle(drop.start.x, drop.start.y, 3.5, "ink")),
        ...names.map((each, index) =>
          text(
            from,
            nameFoot - (names.length - 1 - index) * lineStep,
            each,
            isBattery(node) ? "terminal" : index === 0 ? "designator" : "title",
          ),
        ),
      ],
    });
  }
  return { symbols, references };
}

/** The body metal along the foot of the sheet: one hatched line that every ground symbol stands on. */
export function drawBody(
  nodes: readonly PlacedNode[],
  width: number,
  height: number,
): { readonly symbol: SheetSymbol; readonly testPoint: SheetTestPoint } {
  const grounds = nodes.filter(({ node }) => node.kind === "ground");
  const lowest = Math.max(0, ...nodes.map((placed) => placed.y + placed.shape.height));
  const y = Math.min(lowest + 6, height - 56);
  const left = Math.min(width - 200, ...grounds.map((placed) => placed.x)) - 10;
  const right = Math.max(left + 120, ...grounds.map((placed) => placed.x + placed.shape.width)) + 60;
  const from = Math.max(48, left);
  const to = Math.min(width - 64, right);
  const hatches: Primitive[] = [];
  for (let x = from + 10; x <= to; x += 12) hatches.push(line("fine", [x, y], [x - 8, y + 8]));
  return {
    symbol: {
      id: "body",
      kind: "body",
      designator: "31",
      title: "Body metal",
      partial: false,
      x: from,
      y,
      width: to - from,
      height: 8,
      terminals: [],
      primitives: [
        line("rail", [from, y], [to, y]),
        ...hatches,
        text(from, y + 24, "31 · body metal", "terminal"),
      ],
    },
    testPoint: { pointId: "body", kind: "bareMetal", owner: "body", x: to - 14, y, side: "bottom" },
  };
}
