import type { Result, VehicleDocument } from "@probeworthy/vehicle";
import type { Sheet } from "../geometry";
import { countCrossings } from "../quality";
import { assembleSheet } from "./assemble";
import { type ResolvedConductor, resolveEnd } from "./conductor-ends";
import { type Draft, draftSheet } from "./draft";
import { directConductors } from "./flow";
import { shapeNode } from "./node-shape";
import { type BaseDrawing, placeOnDrawing } from "./place-on-drawing";
import { orderSlots, type RawLayout, runElk, type Strategy } from "./run-elk";
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

/** Lines from which a sheet counts as large. */
const largeSheet = 68;

async function layOut(
  document: VehicleDocument,
  title: string,
  draft: Draft,
  strategy: Strategy,
): Promise<Drawing> {
  let shapes = new Map<string, Shape>(
    draft.nodes.map((node) => [node.id, shapeNode(document, node, node.slots)]),
  );
  // First everything may move; then cavities stay with their connector and the bars follow; then all keeps its place.
  for (const fixed of ["none", "components"] as const) {
    const { slotOrder } = await runElk(draft, shapes, strategy, fixed);
    shapes = new Map(
      draft.nodes.map((node) => [
        node.id,
        shapeNode(document, node, orderSlots(node.slots, slotOrder.get(node.id) ?? [])),
      ]),
    );
  }
  const raw = await runElk(draft, shapes, strategy, "all");
  return { raw, sheet: assembleSheet(document, title, draft, raw) };
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

  const draft = draftSheet(document, directConductors(document, chosen), selection, systemId);
  let best: Drawing | undefined;
  // A large sheet has one try: a second one would cost more than it gains.
  const isLarge = draft.lines.length > largeSheet;
  for (const strategy of isLarge ? strategies.slice(1) : strategies) {
    const drawing = await layOut(document, system.title, draft, strategy);
    if (best === undefined || cost(drawing.sheet) < cost(best.sheet)) best = drawing;
  }
  if (best === undefined) throw new Error("no layout strategy is configured");
  const assemble = (raw: RawLayout) => assembleSheet(document, system.title, draft, raw);
  const { raw } = straighten(document, draft, best, assemble);
  return { ok: true, value: { systemId, title: system.title, draft, raw } };
}
