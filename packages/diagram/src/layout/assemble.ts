import type { VehicleDocument } from "@probeworthy/vehicle";
import { splitColour } from "../colours";
import type {
  Position,
  Sheet,
  SheetConductor,
  SheetConnector,
  SheetReference,
  SheetSymbol,
} from "../geometry";
import { zonesFor } from "../zones";
import { ringDepth } from "./bar-shape";
import { resolveEnd } from "./conductor-ends";
import type { Draft, Slot } from "./draft";
import { drawBody, drawRails } from "./rails";
import { referenceDepth } from "./reference-shape";
import type { PlacedNode, RawLayout } from "./run-elk";
import { boundaryDepth, facingDepth, harnessDepth, type PlacedGroup, postDepth } from "./shape";
import { line, moved } from "./symbols/pieces";
import { pointsOfConnector, pointsOfNode } from "./test-points";

/** Free space between the frame and the drawing, px: above for the rail's name, below for the body line. */
export const border = { left: 68, right: 68, top: 104, bottom: 84 };

const isOnConnector = (slot: Slot) => slot.connector !== undefined;

/** How far a line runs into its node, from the node's edge. */
function lineDepth(placed: PlacedNode, slot: Slot, strip: number): number {
  if (placed.node.kind === "reference") return referenceDepth;
  if (placed.node.kind === "ground") return ringDepth;
  if (placed.node.kind === "component") {
    if (isOnConnector(slot)) return harnessDepth;
    return placed.node.component.kind === "battery" && slot.name === "+" ? strip : postDepth;
  }
  return placed.node.kind === "inline" ? harnessDepth : strip;
}

function connectorOf(document: VehicleDocument, placed: PlacedNode, group: PlacedGroup): SheetConnector {
  const connector = document.connectors.find((candidate) => candidate.id === group.connector);
  if (connector === undefined) throw new Error(`${group.connector} was drafted but is not in the document`);
  const isInline = placed.node.kind === "inline";
  const { x, y, shape } = placed;
  const edge = group.side === "top" ? y : y + shape.height;
  const inward = group.side === "top" ? 1 : -1;
  const depth = (amount: number) => edge + inward * amount;
  const isHarnessBelow = isInline && group.slots[0]?.face === "b";
  return {
    id: connector.id,
    title: connector.title,
    ...(connector.place === undefined ? {} : { place: connector.place }),
    ...(connector.component === undefined ? {} : { component: connector.component }),
    side: isHarnessBelow ? "bottom" : group.side,
    inline: isInline,
    from: { x: x + group.fromX, y: depth(boundaryDepth) },
    to: { x: x + group.toX, y: depth(boundaryDepth) },
    label: { x: x + group.fromX - 5, y: depth(boundaryDepth) + 4, anchor: "end" },
    cavities: group.slots.map((slot) => {
      const cavity = slot.cavity ?? "";
      const near = { x: x + slot.x, y: depth(harnessDepth) };
      const far = { x: x + slot.x, y: depth(facingDepth) };
      return {
        cavity,
        x: x + slot.x,
        harness: isHarnessBelow ? far : near,
        facing: isHarnessBelow ? near : far,
        harnessPoint: `${connector.id}.${cavity}:h`,
        facingPoint: `${connector.id}.${cavity}:${isInline ? "b" : "c"}`,
        ...(slot.conductor === undefined ? {} : { conductor: slot.conductor }),
      };
    }),
  };
}

/** The lead between a post or fuse socket and the symbol itself. */
function postLeads(placed: PlacedNode): Shape["primitives"] {
  const { node, shape } = placed;
  if (node.kind !== "component") return [];
  return shape.slots
    .filter((slot) => !isOnConnector(slot))
    .map((slot) => {
      const strip = shape.strips[slot.side];
      return slot.side === "top"
        ? line("ink", [slot.x, postDepth], [slot.x, strip])
        : line("ink", [slot.x, shape.height - postDepth], [slot.x, shape.height - strip]);
    });
}

function symbolOf(document: VehicleDocument, placed: PlacedNode): SheetSymbol | undefined {
  const { node, shape, x, y } = placed;
  if (node.kind === "inline" || node.kind === "rail" || node.kind === "reference") return undefined;
  const shift = (pieces: Shape["primitives"]) => pieces.map((piece) => moved(piece, x, y));
  const owner = node.kind === "component" ? node.component.id : node.owner;
  const named = [...document.components, ...document.splices, ...document.groundPoints].find(
    (one) => one.id === owner,
  );
  const more = node.kind === "component" ? node.more : undefined;
  return {
    id: node.kind === "stud" ? node.id : owner,
    kind: node.kind === "component" ? node.component.kind : node.kind === "ground" ? "ground" : "splice",
    designator: owner,
    title: named?.title ?? (node.kind === "splice" ? "Splice" : owner),
    ...(named?.place === undefined ? {} : { place: named.place }),
    partial: more !== undefined,
    ...(more === undefined ? {} : { more }),
    ...(node.kind === "component" ? { component: owner } : {}),
    x: x + shape.core.x,
    y: y + shape.core.y,
    width: shape.core.width,
    height: shape.core.height,
    terminals:
      node.kind === "component"
        ? shape.slots.map((slot) => ({
            name: slot.name,
            ...(slot.function === undefined ? {} : { function: slot.function }),
            x: x + slot.x,
            y: slot.side === "top" ? y + shape.core.y : y + shape.core.y + shape.core.height,
            side: slot.side,
            pointOf: `${owner}:${slot.name}`,
          }))
        : [],
    primitives: shift([...postLeads(placed), ...shape.primitives]),
    ...(shape.fitted === undefined ? {} : { fitted: shift(shape.fitted) }),
    ...(shape.pulled === undefined ? {} : { pulled: shift(shape.pulled) }),
  };
}

/** Point ids of a conductor's ends, the upper one first. */
function pointIdsOf(
  document: VehicleDocument,
  conductor: VehicleDocument["conductors"][number],
  upper: PlacedNode | undefined,
  slot: string,
): readonly [string, string] {
  const point = (end: string) =>
    end.includes(".")
      ? end.endsWith("/b")
        ? `${end.slice(0, -2)}:b`
        : `${end}:h`
      : document.groundPoints.some(({ id }) => id === end)
        ? `${end}:ring`
        : end;
  const [from, to] = [point(conductor.from), point(conductor.to)];
  const fromEnd = resolveEnd(document, conductor.from);
  const node = upper?.node;
  const isHere = (owner: string | undefined) =>
    node?.kind === "inline"
      ? slot === from
      : node?.kind === "reference"
        ? node.id.endsWith(` ${owner}`)
        : node?.kind === "component"
          ? slot === conductor.from || node.id === owner
          : node?.owner === owner;
  return isHere(fromEnd?.owner) ? [from, to] : [to, from];
}

function referenceOf(placed: PlacedNode): readonly SheetReference[] {
  const { node, shape, x, y } = placed;
  const slot = shape.slots[0];
  if (node.kind !== "reference" || slot === undefined) return [];
  const { core } = shape;
  const at = {
    x: x + slot.x,
    y: slot.side === "top" ? y + referenceDepth : y + shape.height - referenceDepth,
  };
  return [
    {
      id: node.id,
      at,
      box: { x: x + core.x, y: y + core.y, width: core.width, height: core.height },
      toSystem: node.link.systems[0] ?? "",
      title: node.title,
      systems: node.link.systems,
      toDesignator: node.link.designator,
      ...(node.link.terminal === undefined ? {} : { toTerminal: node.link.terminal }),
      ...(slot.conductor === undefined ? {} : { conductor: slot.conductor }),
      primitives: shape.primitives.map((piece) => moved(piece, x, y)),
    },
  ];
}

type Shape = PlacedNode["shape"];

/** Drops points that lie on a straight line between their neighbours. */
function simplified(points: readonly Position[]): readonly Position[] {
  return points.filter((point, index) => {
    const before = points[index - 1];
    const after = points[index + 1];
    if (before === undefined || after === undefined) return true;
    return !((before.x === point.x && point.x === after.x) || (before.y === point.y && point.y === after.y));
  });
}

/** Snaps every route to the slots it joins and to right angles, and runs it into the strips of its nodes. */
function finishLine(
  drafted: Draft["lines"][number],
  raw: RawLayout,
  nodes: ReadonlyMap<string, PlacedNode>,
): readonly Position[] {
  const route = raw.lines.find((candidate) => candidate.id === drafted.id)?.points;
  const upper = nodes.get(drafted.upper.node);
  const lower = nodes.get(drafted.lower.node);
  if (route === undefined || upper === undefined || lower === undefined)
    throw new Error(`${drafted.id} was not laid out`);
  const slotOf = (placed: PlacedNode, key: string) => {
    const slot = placed.shape.slots.find((candidate) => candidate.key === key);
    if (slot === undefined) throw new Error(`${key} is not on ${placed.node.id}`);
    return slot;
  };
  const start = slotOf(upper, drafted.upper.slot);
  const end = slotOf(lower, drafted.lower.slot);
  const depth = (placed: PlacedNode, slot: Slot) => lineDepth(placed, slot, placed.shape.strips[slot.side]);
  const endY = lower.y + (end.side === "top" ? depth(lower, end) : lower.shape.height - depth(lower, end));
  const startY =
    upper.y + (start.side === "top" ? depth(upper, start) : upper.shape.height - depth(upper, start));
  const last = route.at(-1) as Position;
  const isOnlyRail = raw.nodes.filter(({ node }) => node.kind === "rail").length === 1;
  if (upper.node.kind !== "rail" || !isOnlyRail) {
    const first = route[0] as Position;
    return simplified([{ x: first.x, y: startY }, ...route, { x: last.x, y: endY }]);
  }
  // Every line from a rail starts straight above its first drop: the rail is as long as it needs to be.
  const rest = route.length > 2 ? route.slice(2) : route;
  const head = rest[0] as Position;
  return simplified([{ x: head.x, y: upper.y + upper.shape.strips.bottom }, ...rest, { x: last.x, y: endY }]);
}

/** Builds the sheet from a layout: absolute coordinates, frame, zones, rails; labels are placed afterwards. */
export function assembleSheet(document: VehicleDocument, title: string, draft: Draft, raw: RawLayout): Sheet {
  const shifted: RawLayout = {
    ...raw,
    nodes: raw.nodes.map((placed) => ({ ...placed, x: placed.x + border.left, y: placed.y + border.top })),
    lines: raw.lines.map((line) => ({
      ...line,
      points: line.points.map(({ x, y }) => ({ x: x + border.left, y: y + border.top })),
    })),
  };
  const nodes = new Map(shifted.nodes.map((placed) => [placed.node.id, placed]));
  const routes = new Map(draft.lines.map((line) => [line.id, finishLine(line, shifted, nodes)]));
  const width = raw.width + border.left + border.right;
  const height = raw.height + border.top + border.bottom;
  const connectors = shifted.nodes.flatMap((placed) =>
    placed.shape.groups.map((group) => connectorOf(document, placed, group)),
  );
  const rails = drawRails(shifted.nodes, draft, routes);
  const body = drawBody(shifted.nodes, width, height);
  const conductors = draft.lines
    .filter((line) => line.kind === "conductor")
    .map((line): SheetConductor => {
      const conductor = document.conductors.find((candidate) => candidate.id === line.id);
      if (conductor === undefined) throw new Error(`${line.id} is not in the document`);
      return {
        id: conductor.id,
        colour: splitColour(conductor.colour),
        squareMillimetres: conductor.squareMillimetres,
        from: conductor.from,
        to: conductor.to,
        ...(conductor.twistedPair === undefined ? {} : { twistedPair: conductor.twistedPair }),
        pointOf: pointIdsOf(document, conductor, nodes.get(line.upper.node), line.upper.slot),
        points: routes.get(line.id) ?? [],
        labels: [],
      };
    });
  return {
    title,
    width,
    height,
    symbols: [
      ...rails.symbols,
      ...shifted.nodes.flatMap((placed) => symbolOf(document, placed) ?? []),
      body.symbol,
    ],
    conductors,
    connectors,
    testPoints: [
      ...connectors.flatMap(pointsOfConnector),
      ...shifted.nodes.flatMap(pointsOfNode),
      body.testPoint,
    ],
    links: draft.lines
      .filter((line) => line.kind === "link")
      .map((line) => ({ id: line.id, points: routes.get(line.id) ?? [] })),
    zones: zonesFor(width, height),
    references: [...rails.references, ...shifted.nodes.flatMap(referenceOf)],
    twists: [],
  };
}
