import type { Position, Primitive, SheetReference, SheetSymbol, SheetTestPoint } from "../geometry";
import { textWidth } from "../text-size";
import { shapeBar } from "./bar-shape";
import type { Draft, DraftNode, Slot } from "./draft";
import type { PlacedNode } from "./run-elk";
import type { Shape } from "./shape";
import { circle, line, path, text } from "./symbols/pieces";

type Rail = Extract<DraftNode, { kind: "rail" | "splice" | "ground" | "stud" }>;

const railName = (node: Rail) => node.name ?? `30 · ${node.owner} positive post`;
const feedText = (node: Rail) => (node.title === undefined ? "" : `fed on: ${node.title}`);

/** A rail takes at least the width of what is written over it. */
export function shapeRail(node: Rail, slots: readonly Slot[]): Shape {
  const shape = shapeBar("", slots);
  const words = Math.max(textWidth(railName(node), "terminal"), textWidth(feedText(node), "function") + 20);
  return { ...shape, width: Math.max(shape.width, words + 24) };
}

/** The supply rail: a battery's positive post, or a bar fed elsewhere, as long as what leaves it needs. */
export function drawRail(
  placed: PlacedNode,
  draft: Draft,
  routes: ReadonlyMap<string, readonly Position[]>,
): { readonly symbols: readonly SheetSymbol[]; readonly references: readonly SheetReference[] } {
  const { node } = placed;
  if (node.kind !== "rail") return { symbols: [], references: [] };
  const starts = draft.lines
    .filter((each) => each.upper.node === node.id)
    .flatMap((each) => routes.get(each.id)?.[0] ?? []);
  const first = starts[0];
  if (first === undefined) return { symbols: [], references: [] };
  const isOnly = draft.nodes.filter((other) => other.kind === "rail").length === 1;
  const reach = isOnly ? 24 : 10;
  const from = Math.min(...starts.map(({ x }) => x)) - reach;
  const to = Math.max(...starts.map(({ x }) => x)) + reach;
  const words = feedText(node);
  const baseline = first.y - (words === "" ? 10 : 24);
  const { link, title } = node;
  const arrowTop = first.y - 18;
  const feed: readonly SheetReference[] =
    link === undefined || title === undefined
      ? []
      : [
          {
            id: `feed ${node.owner}`,
            at: { x: from + 6, y: first.y },
            box: { x: from - 2, y: first.y - 22, width: textWidth(words, "function") + 22, height: 18 },
            toSystem: link.systems[0] ?? "",
            title,
            systems: link.systems,
            toDesignator: link.designator,
            primitives: [
              path(
                `M ${from + 1} ${arrowTop + 10} L ${from + 11} ${arrowTop + 10} L ${from + 6} ${arrowTop} Z`,
                "ink",
              ),
              text(from + 16, first.y - 9, words, "function"),
            ],
          },
        ];
  const symbol: SheetSymbol = {
    id: node.name === undefined ? node.id : node.owner,
    kind: "rail",
    designator: node.name === undefined ? "30" : node.owner,
    title: node.name ?? `Supply rail at ${node.owner}`,
    partial: node.name !== undefined,
    x: from,
    y: first.y,
    width: to - from,
    height: 0,
    terminals: [],
    primitives: [
      line("rail", [from, first.y], [to, first.y]),
      ...starts.map(({ x, y }) => circle(x, y, 3.5, "ink")),
      text(from, baseline, railName(node), "terminal"),
    ],
  };
  return { symbols: [symbol], references: feed };
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
