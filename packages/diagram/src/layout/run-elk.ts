import ELK from "elkjs/lib/elk.bundled.js";
import type { ElkExtendedEdge, ElkNode, LayoutOptions } from "elkjs/lib/elk-api";
import type { Position } from "../geometry";
import type { Draft, DraftLine, DraftNode } from "./draft";
import type { Item, LayerModel } from "./order/layer-model";
import { withoutMiddles } from "./route-around";
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
  "elk.randomSeed": "1",
  "elk.padding": "[top=0,left=0,bottom=0,right=0]",
};

let shared: InstanceType<typeof ELK> | undefined;
/** Starting the engine costs more than a layout, and it keeps no state between graphs. */
function engine(): InstanceType<typeof ELK> {
  shared ??= new ELK();
  return shared;
}

const portId = (node: string, slot: string) => `${node}|${slot}`;

function elkNode(node: DraftNode, shape: Shape, isFree: boolean): ElkNode {
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

const shapeIn = (shapes: ReadonlyMap<string, Shape>) => (node: DraftNode) => {
  const shape = shapes.get(node.id);
  if (shape === undefined) throw new Error(`${node.id} has no shape`);
  return shape;
};

function elkEdge(line: DraftLine): ElkExtendedEdge {
  return {
    id: line.id,
    sources: [portId(line.upper.node, line.upper.slot)],
    targets: [portId(line.lower.node, line.lower.slot)],
    layoutOptions: {
      "elk.layered.priority.shortness":
        line.kind === "link" ? "20" : line.upper.node.startsWith("rail") ? "8" : "1",
      "elk.layered.priority.straightness": line.kind === "link" ? "20" : "1",
    },
  };
}

/**
 * Asks the layered algorithm of ELK (Eclipse Layout Kernel) for layers: how far down the sheet every node stands,
 * counted from 0, and a first order within each, from the left. Rejects only when ELK refuses the graph, which is a
 * bug of ours.
 */
export async function findLayers(
  draft: Draft,
  shapes: ReadonlyMap<string, Shape>,
  layering: string,
): Promise<{ readonly layerOf: ReadonlyMap<string, number>; readonly order: readonly string[] }> {
  const shapeOf = shapeIn(shapes);
  const graph = await engine().layout({
    id: "sheet",
    layoutOptions: {
      ...base,
      "elk.layered.layering.strategy": layering,
      "elk.layered.thoroughness": "3",
      // Only layers and order are read: the quickest of the placements will do.
      "elk.layered.nodePlacement.strategy": "SIMPLE",
      "elk.layered.crossingMinimization.greedySwitch.type": "OFF",
    },
    children: draft.nodes.map((node) => elkNode(node, shapeOf(node), true)),
    edges: draft.lines.map(elkEdge),
  });
  const children = [...(graph.children ?? [])].sort((a, b) => (a.y ?? 0) - (b.y ?? 0));
  const layerOf = new Map<string, number>();
  let [layer, foot] = [-1, Number.NEGATIVE_INFINITY];
  for (const { id, y = 0, height = 0 } of children) {
    if (y >= foot) layer += 1;
    foot = Math.max(foot, y + height);
    layerOf.set(id, layer);
  }
  return { layerOf, order: children.sort((a, b) => (a.x ?? 0) - (b.x ?? 0)).map(({ id }) => id) };
}

/** Far enough apart for ELK to see every layer and every place in it by itself, px. */
const step = 20_000;

/** A long line on its way through a layer is a node of its own here, so that ELK keeps it where the order has it. */
function passage(line: string, layer: number): ElkNode {
  const id = `${line}@${layer}`;
  const port = (side: "NORTH" | "SOUTH") => ({
    id: portId(id, side),
    width: 0,
    height: 0,
    x: 0,
    y: 0,
    layoutOptions: { "elk.port.side": side },
  });
  return {
    id,
    width: 0,
    height: 0,
    layoutOptions: { "elk.portConstraints": "FIXED_POS" },
    ports: [port("NORTH"), port("SOUTH")],
  };
}

/** The pieces of a line from layer to layer. */
function piecesOf(line: DraftLine, way: readonly Item[]): readonly ElkExtendedEdge[] {
  const whole = elkEdge(line);
  if (way.length < 3) return [whole];
  const inner = way.slice(1, -1).map(({ layer }) => `${line.id}@${layer}`);
  const starts = [...whole.sources, ...inner.map((id) => portId(id, "SOUTH"))];
  const ends = [...inner.map((id) => portId(id, "NORTH")), ...whole.targets];
  return starts.map((source, index) => ({
    id: `${line.id}/${index}`,
    sources: [source],
    targets: [ends[index] ?? ""],
    layoutOptions: {
      ...whole.layoutOptions,
      ...(index > 0 && index < starts.length - 1 ? { "elk.layered.priority.straightness": "8" } : {}),
    },
  }));
}

/** Asks ELK for places and orthogonal routes in the given order of layers and of what stands in each. */
export async function placeInOrder(
  draft: Draft,
  shapes: ReadonlyMap<string, Shape>,
  placement: string,
  { layers, byLine }: LayerModel,
): Promise<RawLayout> {
  const shapeOf = shapeIn(shapes);
  const nodes = new Map(draft.nodes.map((node) => [node.id, node]));
  const pieces = draft.lines.map((line) => ({
    line: line.id,
    edges: piecesOf(line, byLine.get(line.id) ?? []),
  }));
  const input: ElkNode = {
    id: "sheet",
    layoutOptions: {
      ...base,
      "elk.layered.nodePlacement.strategy": placement,
      "elk.layered.cycleBreaking.strategy": "INTERACTIVE",
      "elk.layered.layering.strategy": "INTERACTIVE",
      "elk.layered.crossingMinimization.strategy": "INTERACTIVE",
      "elk.layered.interactiveReferencePoint": "TOP_LEFT",
      "elk.layered.crossingMinimization.greedySwitch.type": "OFF",
    },
    children: layers.flatMap((row) =>
      row.map((item, index) => {
        const node = item.node === undefined ? undefined : nodes.get(item.node.id);
        return {
          ...(node === undefined
            ? passage(item.line ?? "", item.layer)
            : elkNode(node, shapeOf(node), false)),
          x: index * step,
          y: item.layer * step,
        };
      }),
    ),
    edges: pieces.flatMap(({ edges }) => [...edges]),
  };
  const graph: ElkNode = await engine().layout(input);
  const placed = new Map((graph.children ?? []).map((child) => [child.id, child]));
  const round = ({ x, y }: Position): Position => ({ x: Math.round(x), y: Math.round(y) });
  const routes = new Map<string, Position[]>();
  const lineOf = new Map(pieces.flatMap(({ line, edges }) => edges.map(({ id }) => [id, line] as const)));
  for (const { id, sections } of graph.edges ?? []) {
    const section = sections?.[0];
    if (section === undefined) throw new Error(`${id} was not routed`);
    const line = lineOf.get(id) ?? id;
    const points = [section.startPoint, ...(section.bendPoints ?? []), section.endPoint].map(round);
    routes.set(line, [...(routes.get(line) ?? []), ...points]);
  }
  return {
    width: Math.ceil(graph.width ?? 0),
    height: Math.ceil(graph.height ?? 0),
    nodes: draft.nodes.map((node) => {
      const child = placed.get(node.id);
      return { node, shape: shapeOf(node), x: Math.round(child?.x ?? 0), y: Math.round(child?.y ?? 0) };
    }),
    lines: draft.lines.map(({ id }) => ({ id, points: withoutMiddles(routes.get(id) ?? []) })),
  };
}
