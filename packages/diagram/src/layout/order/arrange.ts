import type { Draft } from "../draft";
import type { Shape } from "../shape";
import { buildLayers, type LayerModel } from "./layer-model";
import { numbers, orderLayers } from "./order-layers";
import { pullDown } from "./pull-down";
import { type Layers, moveNode, orderLike } from "./relayer";

/** How often the search for an order begins again: for each start, for each other set of layers tried, at the end. */
const rounds = { start: 10, layers: 3, end: 25 };
/** How many other sets of layers are tried: fewer where each costs more, and none after so many in vain. */
const triesFor = (lines: number) => Math.min(110, Math.round(7000 / lines));
const vainTries = 35;
/** What a line costs for every layer it runs through, and a layer for the height it takes, beside a crossing. */
const reach = 0.03;
const height = 0.5;

export interface LayersAndOrder {
  readonly layerOf: Layers;
  /** Nodes from the left. */
  readonly order: readonly string[];
}

interface Candidate {
  readonly layers: Layers;
  readonly model: LayerModel;
  readonly cost: number;
}

const sizeOf = ({ byLine, layers }: LayerModel) =>
  reach * [...byLine.values()].reduce((sum, way) => sum + way.length - 1, 0) + height * layers.length;

/**
 * Layers and order with few crossings, looked for from every start given: first the order, then whether something
 * crosses less a layer higher or lower. The same input gives the same arrangement.
 */
export function arrange(
  draft: Draft,
  shapes: ReadonlyMap<string, Shape>,
  starts: readonly LayersAndOrder[],
): LayerModel {
  let best: Candidate | undefined;
  for (const start of starts) {
    const layers = pullDown(draft, start.layerOf);
    const rank = new Map(start.order.map((id, index) => [id, index]));
    const nodes = [...draft.nodes].sort((a, b) => (rank.get(a.id) ?? 0) - (rank.get(b.id) ?? 0));
    const model = buildLayers({ ...draft, nodes }, shapes, layers);
    const cost = orderLayers(model, rounds.start) + sizeOf(model);
    if (best === undefined || cost < best.cost) best = { layers, model, cost };
  }
  if (best === undefined) throw new Error("nothing to start from");

  const degree = new Map<string, number>();
  for (const { upper, lower } of draft.lines) {
    for (const { node } of [upper, lower]) degree.set(node, (degree.get(node) ?? 0) + 1);
  }
  // Where a line only passes through, its layer makes no difference.
  const branching = draft.nodes.filter(
    ({ id, kind }) => kind !== "rail" && kind !== "ground" && (degree.get(id) ?? 0) > 2,
  );
  const draw = numbers();
  const tries = triesFor(draft.lines.length);
  let vain = 0;
  for (let attempt = 0; attempt < tries && vain < vainTries; attempt += 1) {
    vain += 1;
    const node = branching[draw(branching.length)];
    const by = [1, -1, 2, -2][draw(4)];
    if (node === undefined || by === undefined) continue;
    const layers = moveNode(draft, best.layers, node.id, by);
    if (layers === undefined) continue;
    const model = buildLayers(draft, shapes, layers);
    orderLike(model, best.model);
    const cost = orderLayers(model, rounds.layers) + sizeOf(model);
    if (cost < best.cost - 1e-9) vain = 0;
    if (cost <= best.cost) best = { layers, model, cost };
  }
  const lowered = pullDown(draft, best.layers);
  const model = buildLayers(draft, shapes, lowered);
  orderLike(model, best.model);
  const cost = orderLayers(model, rounds.end) + sizeOf(model);
  if (cost <= best.cost) return model;
  orderLayers(best.model, rounds.end);
  return best.model;
}
