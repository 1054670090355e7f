import ELK from "elkjs/lib/elk.bundled.js";
import type { ElkExtendedEdge, ElkNode, LayoutOptions } from "elkjs/lib/elk-api";
import type { Position } from "../geometry";
import type { Draft, DraftNode, Slot } from "./draft";
import type { Shape } from "./shape";

export interface PlacedNode {
  readonly node: DraftNode;
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
}

export interface RoutedLine {
  readonly id: string;
  readonly points: readonly Position[];
}

export interface RawLayout {
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly PlacedNode[];
  readonly lines: readonly RoutedLine[];
}

/** One way of asking the layout engine; several are tried and the best drawing kept. */
export type Strategy = LayoutOptions;

const base: LayoutOptions = {
  "elk.algorithm": "layered",
  "elk.direction": "DOWN",
  // Parts that hang together only through the body metal still have their grounds at the foot.
  "elk.separateConnectedComponents": "false",
  "elk.edgeRouting": "ORTHOGONAL",
  "elk.spacing.nodeNode": "36",
  "elk.spacing.edgeNode": "34",
  "elk.spacing.edgeEdge": "40",
  "elk.layered.spacing.nodeNodeBetweenLayers": "44",
  "elk.layered.spacing.edgeNodeBetweenLayers": "18",
  "elk.layered.spacing.edgeEdgeBetweenLayers": "13",
  "elk.spacing.portPort": "48",
  "elk.layered.nodePlacement.favorStraightEdges": "true",
  "elk.layered.unnecessaryBendpoints": "false",
  "elk.padding": "[top=0,left=0,bottom=0,right=0]",
};

let shared: InstanceType<typeof ELK> | undefined;
/** Starting the engine costs more than a layout, and it keeps no state between graphs. */
function engine(): InstanceType<typeof ELK> {
  shared ??= new ELK();
  return shared;
}

const portId = (node: string, slot: string) => `${node}|${slot}`;

/**
 * Which slots keep their place: none; those of components and in-line connectors, whose cavities stay together; or
 * all but the rail's, which is drawn as long as it needs to be.
 */
export type Fixed = "none" | "components" | "all";

function elkNode(node: DraftNode, shape: Shape, fixed: Fixed): ElkNode {
  const isComponent = node.kind === "component" || node.kind === "inline";
  const isRelay =
    isComponent && node.kind === "component" && ["relay", "twoFilamentLamp"].includes(node.component.kind);
  const isFree =
    node.kind === "rail" || (isRelay ? false : fixed === "none") || (fixed === "components" && !isComponent);
  return {
    id: node.id,
    width: shape.width,
    height: shape.height,
    layoutOptions: {
      "elk.portConstraints": isFree ? "FIXED_SIDE" : "FIXED_POS",
      ...(node.kind === "rail" ? { "elk.layered.layering.layerConstraint": "FIRST_SEPARATE" } : {}),
      ...(node.kind === "ground" ? { "elk.layered.layering.layerConstraint": "LAST_SEPARATE" } : {}),
    },
    ports: shape.slots.map((slot) => ({
      id: portId(node.id, slot.key),
      width: 0,
      height: 0,
      x: slot.x,
      y: slot.side === "top" ? 0 : shape.height,
      layoutOptions: { "elk.port.side": slot.side === "top" ? "NORTH" : "SOUTH" },
    })),
  };
}

/**
 * Asks the layered algorithm of ELK (Eclipse Layout Kernel) for places and orthogonal routes. ELK chooses
 * the order of the slots that are not fixed.
 * Rejects only when ELK refuses the graph, which is a bug of ours.
 */
export async function runElk(
  draft: Draft,
  shapes: ReadonlyMap<string, Shape>,
  strategy: Strategy,
  fixed: Fixed,
): Promise<RawLayout & { readonly slotOrder: ReadonlyMap<string, readonly string[]> }> {
  const shapeOf = (node: DraftNode) => {
    const shape = shapes.get(node.id);
    if (shape === undefined) throw new Error(`${node.id} has no shape`);
    return shape;
  };
  const edges: ElkExtendedEdge[] = draft.lines.map((line) => ({
    id: line.id,
    sources: [portId(line.upper.node, line.upper.slot)],
    targets: [portId(line.lower.node, line.lower.slot)],
    layoutOptions: {
      "elk.layered.priority.shortness":
        line.kind === "link" ? "20" : line.upper.node.startsWith("rail") ? "8" : "1",
      "elk.layered.priority.straightness": line.kind === "link" ? "20" : "1",
    },
  }));
  const input: ElkNode = {
    id: "sheet",
    layoutOptions: {
      ...base,
      ...strategy,
      "elk.layered.thoroughness": draft.lines.length > 68 ? "8" : "24",
    },
    children: draft.nodes.map((node) => elkNode(node, shapeOf(node), fixed)),
    edges,
  };
  const graph = await engine().layout(input);
  const placed = new Map((graph.children ?? []).map((child) => [child.id, child]));
  const round = ({ x, y }: Position): Position => ({ x: Math.round(x), y: Math.round(y) });
  return {
    width: Math.ceil(graph.width ?? 0),
    height: Math.ceil(graph.height ?? 0),
    nodes: draft.nodes.map((node) => {
      const child = placed.get(node.id);
      return { node, shape: shapeOf(node), x: Math.round(child?.x ?? 0), y: Math.round(child?.y ?? 0) };
    }),
    lines: (graph.edges ?? []).map((edge) => {
      const section = edge.sections?.[0];
      if (section === undefined) throw new Error(`${edge.id} was not routed`);
      return {
        id: edge.id,
        points: [section.startPoint, ...(section.bendPoints ?? []), section.endPoint].map(round),
      };
    }),
    slotOrder: new Map(
      draft.nodes.map((node) => {
        const ports = [...(placed.get(node.id)?.ports ?? [])].sort((a, b) => (a.x ?? 0) - (b.x ?? 0));
        return [node.id, ports.map((port) => port.id.slice(node.id.length + 1))];
      }),
    ),
  };
}

/** Slots in the order the layout found, the cavities of one connector brought together about their middle. */
export function orderSlots(slots: readonly Slot[], order: readonly string[]): readonly Slot[] {
  const rank = (slot: Slot) => order.indexOf(slot.key);
  const groupRank = (slot: Slot) => {
    if (slot.connector === undefined) return rank(slot);
    const members = slots.filter((other) => other.connector === slot.connector && other.side === slot.side);
    return members.reduce((sum, member) => sum + rank(member), 0) / members.length;
  };
  return [...slots].sort(
    (a, b) =>
      groupRank(a) - groupRank(b) ||
      (a.connector ?? "").localeCompare(b.connector ?? "") ||
      rank(a) - rank(b),
  );
}
