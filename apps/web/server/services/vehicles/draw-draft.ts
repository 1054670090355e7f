import "server-only";
import type { Sheet } from "@probeworthy/diagram";
import { layoutDrawing, placeOnDrawing } from "@probeworthy/diagram/layout";
import { type VehicleDocument, vehicleDocumentSchema } from "@probeworthy/vehicle";
import { BoundedCache } from "../attempts/bounded-cache";

export type DrawResult =
  | { readonly drawn: true; readonly sheet: Sheet }
  | { readonly drawn: false; readonly reason: string };

const lists = [
  "conditions",
  "components",
  "connectors",
  "conductors",
  "splices",
  "groundPoints",
  "systems",
] as const;

type Laid = Awaited<ReturnType<typeof layoutDrawing>>;

// What is placed by hand goes on top of the layout, which stays: a part that is put down is drawn at once.
const laidOut = new BoundedCache<Promise<Laid>>(24);

/** Draws a system of a draft from those of its parts that are complete; the rest is on the list of messages anyway. */
export async function drawDraft(
  draft: Readonly<Record<string, unknown>>,
  systemId: string,
): Promise<DrawResult> {
  const document = drawable(draft);
  const { components, connectors, conductors, splices, groundPoints, systems } = document;
  const seen = { components, connectors, conductors, splices, groundPoints, systems };
  const key = `${systemId} ${JSON.stringify(seen)}`;
  const known = laidOut.get(key);
  const made = known ?? layoutDrawing(document, systemId);
  if (known === undefined) {
    laidOut.set(key, made);
    made.catch(() => laidOut.delete(key));
  }
  const sheet = await made;
  if (sheet.ok) {
    const placed = document.drawing?.placed[systemId] ?? {};
    return { drawn: true, sheet: placeOnDrawing(document, sheet.value, placed) };
  }
  switch (sheet.error.code) {
    case "unknown_system":
      return { drawn: false, reason: "This system is not complete enough to be drawn." };
    case "nothing_to_draw":
      return { drawn: false, reason: "No conductor reaches a component of this system yet." };
    case "dangling_conductor":
      return {
        drawn: false,
        reason: `Conductor ${sheet.error.conductor} ends at ${sheet.error.end}, which is not there.`,
      };
  }
}

/** The complete parts of a draft; conductors only while both of their ends are there. */
function drawable(draft: Readonly<Record<string, unknown>>): VehicleDocument {
  const parts = Object.fromEntries(
    lists.map((name) => {
      const { element } = vehicleDocumentSchema.shape[name];
      const found = draft[name];
      const items: readonly unknown[] = Array.isArray(found) ? found : [];
      return [name, items.filter((item) => element.safeParse(item).success)];
    }),
  ) as unknown as Pick<VehicleDocument, (typeof lists)[number]>;
  const drawing = vehicleDocumentSchema.shape.drawing.safeParse(draft.drawing);
  const heads = new Set(
    [...parts.components, ...parts.connectors, ...parts.splices, ...parts.groundPoints].map(({ id }) => id),
  );
  const isThere = (end: string) => heads.has(end.split(/[.:]/)[0] ?? end);
  return {
    format: "probeworthy-vehicle-1",
    id: "draft",
    title: typeof draft.title === "string" ? draft.title : "",
    description: "",
    nominalVolts: 12,
    symptoms: [],
    ...parts,
    conductors: parts.conductors.filter(({ from, to }) => isThere(from) && isThere(to)),
    ...(drawing.success && drawing.data !== undefined ? { drawing: drawing.data } : {}),
  };
}
