import type { VehicleDocument } from "@probeworthy/vehicle";
import type { Position, Sheet } from "../geometry";
import {
  conductorsOnConductors,
  conductorsThroughSymbols,
  countCrossings,
  overlappingLabels,
} from "../quality";
import type { Draft, DraftLine } from "./draft";
import { shapeNode } from "./node-shape";
import type { PlacedNode, RawLayout } from "./run-elk";

export interface Drawing {
  readonly raw: RawLayout;
  readonly sheet: Sheet;
}

/** Steps aside up to this many px look like a slip of the pen and are worth removing. */
const smallStep = 26;
/** Two dots on a bar, and two neighbouring nodes, stay at least this far apart, px. */
const dotDistance = 30;
const nodeDistance = 14;

type End = "upper" | "lower";

const cornersOf = (sheet: Sheet) =>
  [...sheet.conductors, ...sheet.links].reduce((sum, { points }) => sum + points.length - 2, 0);

/** Routes with one small step taken out between two upright runs, where neither end of the route has to move. */
function withoutStep(points: readonly Position[]): readonly (readonly Position[])[] {
  return points.flatMap((from, index) => {
    const to = points[index + 1];
    if (to === undefined || from.y !== to.y || Math.abs(from.x - to.x) > smallStep) return [];
    const onto = (x: number, ...moved: readonly number[]) =>
      points.map((point, other) => (moved.includes(other) ? { x, y: point.y } : point));
    const isRunMovable = (outer: number) => outer > 0 && outer < points.length - 1;
    return [
      ...(isRunMovable(index - 1) ? [onto(to.x, index - 1, index)] : []),
      ...(isRunMovable(index + 2) ? [onto(from.x, index + 1, index + 2)] : []),
    ];
  });
}

/** How far a route steps aside between two upright runs, if that is all it does and it is little. */
function stepOf(points: readonly Position[]): number | undefined {
  const [a, b, c, d] = points;
  if (points.length !== 4 || a === undefined || b === undefined || c === undefined || d === undefined) return;
  const step = d.x - a.x;
  return a.x === b.x && c.x === d.x && step !== 0 && Math.abs(step) <= smallStep ? step : undefined;
}

/** A route with one end moved sideways; undefined when a straight one would have to bend for it. */
function shiftedRoute(points: readonly Position[], end: End, by: number, isFromRail: boolean) {
  const move = ({ x, y }: Position): Position => ({ x: x + by, y });
  if (points.length === 2) return isFromRail ? points.map(move) : undefined;
  const isMoved = (index: number) => (end === "upper" ? index < 2 : index >= points.length - 2);
  return points.map((point, index) => (isMoved(index) ? move(point) : point));
}

function shiftLine(raw: RawLayout, line: DraftLine, end: End, by: number): RawLayout | undefined {
  const route = raw.lines.find((candidate) => candidate.id === line.id);
  const upper = raw.nodes.find(({ node }) => node.id === line.upper.node);
  if (route === undefined) return undefined;
  const points = shiftedRoute(route.points, end, by, upper?.node.kind === "rail");
  if (points === undefined) return undefined;
  return { ...raw, lines: raw.lines.map((other) => (other === route ? { ...route, points } : other)) };
}

const replaced = (raw: RawLayout, old: PlacedNode, next: PlacedNode): RawLayout => ({
  ...raw,
  nodes: raw.nodes.map((placed) => (placed === old ? next : placed)),
});

/** Moves one dot along its bar. */
function moveDot(document: VehicleDocument, raw: RawLayout, line: DraftLine, end: End, by: number) {
  const placed = raw.nodes.find(({ node }) => node.id === line[end].node);
  if (placed === undefined || !["splice", "ground", "stud"].includes(placed.node.kind)) return undefined;
  const slots = placed.shape.slots.map((slot) =>
    slot.key === line[end].slot ? { ...slot, x: slot.x + by } : slot,
  );
  const moved = slots.find((slot) => slot.key === line[end].slot);
  const isCrowded = slots.some(
    (slot) => slot !== moved && slot.side === moved?.side && Math.abs(slot.x - moved.x) < dotDistance,
  );
  if (isCrowded) return undefined;
  const shape = shapeNode(document, placed.node, slots);
  return shiftLine(replaced(raw, placed, { ...placed, shape }), line, end, by);
}

/** Moves a whole node and every line that ends on it. */
function moveNode(draft: Draft, raw: RawLayout, id: string, by: number): RawLayout | undefined {
  const placed = raw.nodes.find(({ node }) => node.id === id);
  if (placed === undefined || placed.node.kind === "rail") return undefined;
  const next = { ...placed, x: placed.x + by };
  const isCrowded = raw.nodes.some(
    (other) =>
      other !== placed &&
      other.node.kind !== "rail" &&
      other.y < next.y + next.shape.height &&
      next.y < other.y + other.shape.height &&
      other.x < next.x + next.shape.width + nodeDistance &&
      next.x < other.x + other.shape.width + nodeDistance,
  );
  if (isCrowded || next.x < 0 || next.x + next.shape.width > raw.width) return undefined;
  let result: RawLayout | undefined = replaced(raw, placed, next);
  for (const line of draft.lines) {
    for (const end of ["upper", "lower"] as const) {
      if (line[end].node === id && result !== undefined) result = shiftLine(result, line, end, by);
    }
  }
  return result;
}

const faultsOf = (sheet: Sheet): readonly number[] => [
  countCrossings(sheet),
  conductorsThroughSymbols(sheet).length,
  conductorsOnConductors(sheet).length,
  overlappingLabels(sheet).length,
];

/**
 * Takes small steps out of the conductors by moving dots along their bars and nodes sideways, as long as nothing gets
 * worse: no new crossing, nothing through a symbol or on another conductor, no text covered, fewer corners each time.
 */
export function straighten(
  document: VehicleDocument,
  draft: Draft,
  drawing: Drawing,
  assemble: (raw: RawLayout) => Sheet,
): Drawing {
  let best = drawing;
  const attempts = (line: DraftLine): readonly (RawLayout | undefined)[] => {
    const { raw } = best;
    const route = raw.lines.find((candidate) => candidate.id === line.id);
    if (route === undefined) return [];
    const step = stepOf(route.points);
    if (step === undefined) {
      return withoutStep(route.points).map((points) => ({
        ...raw,
        lines: raw.lines.map((other) => (other === route ? { ...route, points } : other)),
      }));
    }
    return [
      moveDot(document, raw, line, "lower", -step),
      moveDot(document, raw, line, "upper", step),
      moveNode(draft, raw, line.lower.node, -step),
      moveNode(draft, raw, line.upper.node, step),
    ];
  };
  let faults = faultsOf(best.sheet);
  const isBetter = (sheet: Sheet) => {
    if (cornersOf(sheet) >= cornersOf(best.sheet)) return false;
    const next = faultsOf(sheet);
    const isNoWorse = next.every((count, index) => count <= (faults[index] ?? 0));
    if (isNoWorse) faults = next;
    return isNoWorse;
  };

  // Corners fall with every improvement, so this ends.
  // On a large sheet each look costs more: the number of looks is bounded so that a drawing stays quick.
  let looks = Math.round(24_000 / Math.max(60, draft.lines.length));
  for (let improved = true; improved && looks > 0; ) {
    improved = false;
    for (const line of draft.lines) {
      if (looks <= 0) break;
      for (const raw of attempts(line)) {
        if (raw === undefined) continue;
        looks -= 1;
        const sheet = assemble(raw);
        if (!isBetter(sheet)) continue;
        best = { raw, sheet };
        improved = true;
        break;
      }
    }
  }
  return best;
}
