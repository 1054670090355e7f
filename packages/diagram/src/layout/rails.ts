import type { Position, Primitive, SheetSymbol, SheetTestPoint } from "../geometry";
import type { Draft } from "./draft";
import type { PlacedNode } from "./run-elk";
import { circle, line, text } from "./symbols/pieces";

/** The supply rail: the battery's positive post drawn as long as the conductors that leave it need. */
export function drawRail(
  placed: PlacedNode,
  draft: Draft,
  routes: ReadonlyMap<string, readonly Position[]>,
): readonly SheetSymbol[] {
  const { node } = placed;
  if (node.kind !== "rail") return [];
  const starts = draft.lines
    .filter((each) => each.upper.node === node.id)
    .flatMap((each) => routes.get(each.id)?.[0] ?? []);
  const first = starts[0];
  if (first === undefined) return [];
  const from = Math.min(...starts.map(({ x }) => x)) - 24;
  const to = Math.max(...starts.map(({ x }) => x)) + 24;
  return [
    {
      id: node.id,
      kind: "rail",
      designator: "30",
      title: `Supply rail at ${node.owner}`,
      partial: false,
      x: from,
      y: first.y,
      width: to - from,
      height: 0,
      terminals: [],
      primitives: [
        line("rail", [from, first.y], [to, first.y]),
        ...starts.map(({ x, y }) => circle(x, y, 3.5, "ink")),
        text(from, first.y - 10, `30 · ${node.owner} positive post`, "terminal"),
      ],
    },
  ];
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
