import type { Result, VehicleDocument } from "@probeworthy/vehicle";
import type { Sheet } from "../geometry";
import { countCrossings } from "../quality";
import { assembleSheet } from "./assemble";
import { type ResolvedConductor, resolveEnd } from "./conductor-ends";
import { type Draft, draftSheet } from "./draft";
import { directConductors } from "./flow";
import { shapeNode } from "./node-shape";
import { buildLayers } from "./order/layer-model";
import { mergeKin } from "./order/merge-kin";
import { orderLayers } from "./order/order-layers";
import { pullDown } from "./order/pull-down";
import { type BaseDrawing, placeOnDrawing } from "./place-on-drawing";
import { findLayers, placeInOrder, type RawLayout, type Strategy } from "./run-elk";
import { selectConductors } from "./select-conductors";
import type { Shape } from "./shape";
import { type Drawing, straighten } from "./straighten";

export type LayoutError =
  | { readonly code: "unknown_system"; readonly systemId: string }
  /** A conductor ends at something the document does not have; `path` as in `conductors[3].from`. */
  | {
      readonly code: "dangling_conductor";
      readonly conductor: string;
      readonly path: string;
      readonly end: string;
    }
  /** No conductor touches the system's components. */
  | { readonly code: "nothing_to_draw"; readonly systemId: string };

/** As high as possible with balanced columns, or the shortest lines with straightened ones: which reads better varies. */
const strategies: readonly Strategy[] = [
  ["LONGEST_PATH_SOURCE", "BRANDES_KOEPF"],
  ["NETWORK_SIMPLEX", "NETWORK_SIMPLEX"],
].map(([layering = "", placement = ""]) => ({
  "elk.layered.layering.strategy": layering,
  "elk.layered.nodePlacement.strategy": placement,
  "elk.randomSeed": "1",
}));

/** How often a search for a better order begins again. */
const rounds = 40;

async function layOut(
  document: VehicleDocument,
  title: string,
  unordered: Draft,
  strategy: Strategy,
): Promise<Drawing & { readonly draft: Draft }> {
  const shapesOf = ({ nodes }: Draft) =>
    new Map<string, Shape>(nodes.map((node) => [node.id, shapeNode(document, node, node.slots)]));
  const shapes = shapesOf(unordered);
  const { layerOf, order } = await findLayers(unordered, shapes, strategy);
  const nodes = [...unordered.nodes].sort((a, b) => order.indexOf(a.id) - order.indexOf(b.id));
  const model = buildLayers({ ...unordered, nodes }, shapes, pullDown(unordered, layerOf));
  orderLayers(model, rounds);
  const draft = mergeKin(unordered, model);
  const raw = await placeInOrder(draft, shapesOf(draft), strategy, model);
  return { raw, draft, sheet: assembleSheet(document, title, draft, raw) };
}

/** Lower is better: crossings weigh most, then corners, then the size of the sheet. */
function cost(sheet: Sheet): number {
  const corners = sheet.conductors.reduce((sum, conductor) => sum + conductor.points.length - 2, 0);
  return countCrossings(sheet) * 10 + corners + (sheet.width + sheet.height) / 20;
}

/**
 * The wiring diagram of one system: supply at the top, ground at the foot, current down the page. Lengths in px at
 * zoom 1. What the author has placed (`document.drawing`) keeps its place. The same document gives the same bytes on
 * every machine. Server only: it loads the layout engine.
 */
export async function layoutSheet(
  document: VehicleDocument,
  systemId: string,
): Promise<Result<Sheet, LayoutError>> {
  const drawing = await layoutDrawing(document, systemId);
  if (!drawing.ok) return drawing;
  return {
    ok: true,
    value: placeOnDrawing(document, drawing.value, document.drawing?.placed[systemId] ?? {}),
  };
}

/**
 * The drawing before anybody has placed anything on it: plain JSON, to be kept while an author drags. Give it to
 * `placeOnDrawing` with the same document.
 */
export async function layoutDrawing(
  document: VehicleDocument,
  systemId: string,
): Promise<Result<BaseDrawing, LayoutError>> {
  const system = document.systems.find((candidate) => candidate.id === systemId);
  if (system === undefined) return { ok: false, error: { code: "unknown_system", systemId } };

  const resolved: ResolvedConductor[] = [];
  for (const [index, conductor] of document.conductors.entries()) {
    const from = resolveEnd(document, conductor.from);
    const to = resolveEnd(document, conductor.to);
    if (from === undefined || to === undefined) {
      const side = from === undefined ? "from" : "to";
      const path = `conductors[${index}].${side}`;
      return {
        ok: false,
        error: { code: "dangling_conductor", conductor: conductor.id, path, end: conductor[side] },
      };
    }
    resolved.push({ id: conductor.id, from, to });
  }
  const selection = selectConductors(document, resolved, systemId);
  const chosen = selection.conductors;
  if (chosen.length === 0) return { ok: false, error: { code: "nothing_to_draw", systemId } };

  const drafted = draftSheet(document, directConductors(document, chosen), selection, systemId);
  let best: Awaited<ReturnType<typeof layOut>> | undefined;
  for (const strategy of strategies) {
    const drawing = await layOut(document, system.title, drafted, strategy);
    if (best === undefined || cost(drawing.sheet) < cost(best.sheet)) best = drawing;
  }
  if (best === undefined) throw new Error("no layout strategy is configured");
  const { draft } = best;
  const assemble = (raw: RawLayout) => assembleSheet(document, system.title, draft, raw);
  const { raw } = straighten(document, draft, best, assemble);
  return { ok: true, value: { systemId, title: system.title, draft, raw } };
}
