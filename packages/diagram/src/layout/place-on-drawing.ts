import type { VehicleDocument } from "@probeworthy/vehicle";
import type { Box, Position, Sheet } from "../geometry";
import { segmentEntersBox, segmentsOf } from "../quality";
import { assembleSheet, border } from "./assemble";
import type { Draft, DraftLine } from "./draft";
import { markTwists } from "./mark-twists";
import { placeLabels } from "./place-labels";
import { routeAround } from "./route-around";
import type { PlacedNode, RawLayout, RoutedLine } from "./run-elk";
import { boundaryDepth } from "./shape";

/** A drawing that has been laid out and not been touched: what an author's placements are put on. */
export interface BaseDrawing {
  readonly systemId: string;
  readonly title: string;
  readonly draft: Draft;
  readonly raw: RawLayout;
}

/** By designator: where the upper left corner of the symbol (of an in-line connector's boundary) is to be, px on the sheet. */
export type Placements = Readonly<Record<string, Position>>;

const isNamed = ({ node }: PlacedNode, designator: string) => {
  if (node.kind === "component") return node.component.id === designator;
  if (node.kind === "inline") return node.connector === designator;
  return (node.kind === "splice" || node.kind === "ground") && node.owner === designator;
};

/** The corner a placement speaks of, from the node's own corner. */
function corner({ node, shape }: PlacedNode): Position {
  const group = shape.groups[0];
  return node.kind === "inline" && group !== undefined ? { x: group.fromX, y: boundaryDepth } : shape.core;
}

function moveNodes(
  raw: RawLayout,
  placements: Placements,
): { nodes: readonly PlacedNode[]; moved: ReadonlySet<string> } {
  const wanted = new Map<string, Position>();
  for (const [designator, place] of Object.entries(placements)) {
    const placed = raw.nodes.find((each) => isNamed(each, designator));
    if (placed !== undefined) wanted.set(placed.node.id, place);
  }
  const moved = new Set<string>();
  const nodes = raw.nodes.map((placed) => {
    const place = wanted.get(placed.node.id);
    if (place === undefined) return placed;
    const { x, y } = corner(placed);
    const next = {
      ...placed,
      x: Math.max(0, Math.round(place.x - border.left - x)),
      y: Math.max(0, Math.round(place.y - border.top - y)),
    };
    if (next.x === placed.x && next.y === placed.y) return placed;
    moved.add(placed.node.id);
    return next;
  });
  return { nodes, moved };
}

const boxOf = ({ x, y, shape }: PlacedNode): Box => ({ x, y, width: shape.width, height: shape.height });

/** Where a line leaves its node, at the node's edge. */
function portOf(
  nodes: ReadonlyMap<string, PlacedNode>,
  end: DraftLine["upper"],
): Position & { readonly out: 1 | -1 } {
  const placed = nodes.get(end.node);
  const slot = placed?.shape.slots.find((each) => each.key === end.slot);
  if (placed === undefined || slot === undefined) throw new Error(`${end.slot} is not on ${end.node}`);
  const isTop = slot.side === "top";
  return { x: placed.x + slot.x, y: isTop ? placed.y : placed.y + placed.shape.height, out: isTop ? -1 : 1 };
}

/** Routes every line again that hangs on a moved node or would run through one; all others stay as they are. */
function routeAgain(
  draft: Draft,
  nodes: readonly PlacedNode[],
  moved: ReadonlySet<string>,
  lines: readonly RoutedLine[],
) {
  const byId = new Map(nodes.map((placed) => [placed.node.id, placed]));
  const movedBoxes = nodes.filter(({ node }) => moved.has(node.id)).map(boxOf);
  const isDisturbed = (line: DraftLine, route: RoutedLine) =>
    moved.has(line.upper.node) ||
    moved.has(line.lower.node) ||
    segmentsOf(route.points).some((segment) => movedBoxes.some((box) => segmentEntersBox(segment, box)));
  const routes = new Map(lines.map((route) => [route.id, route]));
  const again = draft.lines.filter((line) => {
    const route = routes.get(line.id);
    return route !== undefined && isDisturbed(line, route);
  });
  for (const line of again) routes.delete(line.id);
  const isOnlyRail = nodes.filter(({ node }) => node.kind === "rail").length === 1;
  const obstacles = nodes.filter(({ node }) => node.kind !== "rail").map(boxOf);
  for (const line of again) {
    const to = portOf(byId, line.lower);
    const isFromRail = isOnlyRail && byId.get(line.upper.node)?.node.kind === "rail";
    const port = portOf(byId, line.upper);
    const taken = [...routes.values()].flatMap(({ points }) => segmentsOf(points));
    const isFree = (x: number) =>
      !taken.some(({ a, b }) => a.x === b.x && Math.abs(a.x - x) < 14 && Math.min(a.y, b.y) < port.y + 60);
    const offset = isFromRail
      ? [0, 16, -16, 32, -32, 48, -48, 64, -64].find((by) => isFree(to.x + by))
      : undefined;
    const from = offset === undefined ? port : { ...port, x: to.x + offset };
    const points = routeAround(from, to, obstacles, taken);
    // A line from the only rail starts wherever its first drop is: two more points say that it begins there.
    routes.set(line.id, { id: line.id, points: isFromRail ? [from, from, ...points] : points });
  }
  return lines.flatMap(({ id }) => routes.get(id) ?? []);
}

/**
 * The sheet with the author's placements: placed things keep their places, the conductors at them and in their way are
 * routed again, labels find new places. Synchronous and quick, for every step of a drag; the same as laying the
 * document out with these placements. Designators that are not on the sheet are passed over; supply rails stay at the
 * top.
 */
export function placeOnDrawing(
  document: VehicleDocument,
  drawing: BaseDrawing,
  placements: Placements,
): Sheet {
  const { title, draft, raw } = drawing;
  const { nodes, moved } = moveNodes(raw, placements);
  const lines = moved.size === 0 ? raw.lines : routeAgain(draft, nodes, moved, raw.lines);
  const points = lines.flatMap((line) => line.points);
  const width = Math.max(
    raw.width,
    ...nodes.map((each) => each.x + each.shape.width),
    ...points.map(({ x }) => x + 30),
  );
  const height = Math.max(
    raw.height,
    ...nodes.map((each) => each.y + each.shape.height),
    ...points.map(({ y }) => y + 30),
  );
  const sheet = assembleSheet(document, title, draft, { width, height, nodes, lines });
  return markTwists(placeLabels(sheet));
}

/** One step of a drag: the placements so far with one changed. */
export function dragOnDrawing(
  document: VehicleDocument,
  drawing: BaseDrawing,
  placements: Placements,
  dragged: { readonly designator: string; readonly to: Position },
): Sheet {
  return placeOnDrawing(document, drawing, { ...placements, [dragged.designator]: dragged.to });
}
