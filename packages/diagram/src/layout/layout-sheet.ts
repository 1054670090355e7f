import type { Result, VehicleDocument } from "@probeworthy/vehicle";
import type { Sheet } from "../geometry";
import { countCrossings } from "../quality";
import { assembleSheet } from "./assemble";
import { type ResolvedConductor, resolveEnd } from "./conductor-ends";
import { type Draft, draftSheet } from "./draft";
import { directConductors } from "./flow";
import { shapeNode } from "./node-shape";
import { arrange, type LayersAndOrder } from "./order/arrange";
import { mergeKin } from "./order/merge-kin";
import { type BaseDrawing, placeOnDrawing } from "./place-on-drawing";
import { findLayers, placeInOrder, type RawLayout } from "./run-elk";
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

/** As high as possible, or the shortest lines: both are where the search for an arrangement begins. */
const layerings = ["LONGEST_PATH_SOURCE", "NETWORK_SIMPLEX"] as const;
/** Balanced columns or straightened lines: which reads better varies. */
const placements = ["BRANDES_KOEPF", "NETWORK_SIMPLEX"] as const;

/** The drawings of one arrangement, to choose from. */
async function layOut(document: VehicleDocument, title: string, drafted: Draft) {
  const shapesOf = ({ nodes }: Draft) =>
    new Map<string, Shape>(nodes.map((node) => [node.id, shapeNode(document, node, node.slots)]));
  const shapes = shapesOf(drafted);
  const starts: LayersAndOrder[] = [];
  for (const layering of layerings) starts.push(await findLayers(drafted, shapes, layering));
  const model = arrange(drafted, shapes, starts);
  const draft = mergeKin(drafted, model);
  const drawings: Drawing[] = [];
  for (const placement of placements) {
    const raw = await placeInOrder(draft, shapesOf(draft), placement, model);
    drawings.push({ raw, sheet: assembleSheet(document, title, draft, raw) });
  }
  return { draft, drawings };
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
  const { draft, drawings } = await layOut(document, system.title, drafted);
  const [best] = [...drawings].sort((one, other) => cost(one.sheet) - cost(other.sheet));
  if (best === undefined) throw new Error("no placement is configured");
  const assemble = (raw: RawLayout) => assembleSheet(document, system.title, draft, raw);
  const { raw } = straighten(document, draft, best, assemble);
  return { ok: true, value: { systemId, title: system.title, draft, raw } };
}
