import "server-only";
import type { Database } from "@probeworthy/database";
import type { Sheet } from "@probeworthy/diagram";
import { layoutSheet } from "@probeworthy/diagram/layout";
import type { VehicleDocument } from "@probeworthy/vehicle";
import { z } from "zod";
import { BoundedCache } from "../services/attempts/bounded-cache";

/** Raise it when the same document would be laid out otherwise: drawings of older layouts are then made anew. */
const layoutVersion = 6;

/** A version of a vehicle, and the database its drawings are kept in. */
export interface SheetSource {
  readonly database: Database;
  readonly organisationId: string;
  readonly versionId: string;
  readonly document: VehicleDocument;
}

// A vehicle version never changes, so neither do its sheets.
const drawn = new BoundedCache<Promise<Sheet>>(96);

/** Sheets are laid out one after the other, so that asking for the whole set does not stop the server for everybody. */
let last: Promise<unknown> = Promise.resolve();

/** Written by `layoutSheet` of this very layout version. */
const storedSheet = z.custom<Sheet>(
  (value) => typeof value === "object" && value !== null && "symbols" in value && "zones" in value,
);

/**
 * The sheet of one system, made from the vehicle as it leaves the works: from memory, from the database, or laid out
 * now, which takes seconds. Rejects when it cannot be drawn; the next call then tries again.
 */
export function loadSheet(source: SheetSource, systemId: string): Promise<Sheet> {
  const key = `${source.organisationId}/${source.versionId}/${systemId}`;
  const known = drawn.get(key);
  if (known !== undefined) return known;
  const made = findOrDraw(source, systemId);
  drawn.set(key, made);
  made.catch(() => drawn.delete(key));
  return made;
}

async function findOrDraw(source: SheetSource, system: string): Promise<Sheet> {
  const { database, organisationId, versionId, document } = source;
  const ref = { organisationId, vehicleVersionId: versionId, system, layoutVersion };
  const stored = storedSheet.safeParse(await database.vehicles.findSheet(ref));
  if (stored.success) return stored.data;
  const drawing = last.then(() => draw(document, system));
  // The next in the queue goes on whatever becomes of this one; its own callers hear of a failure.
  last = drawing.catch(() => undefined);
  const sheet = await drawing;
  await database.vehicles.saveSheet(ref, sheet);
  return sheet;
}

async function draw(document: VehicleDocument, systemId: string): Promise<Sheet> {
  const sheet = await layoutSheet(document, systemId);
  if (!sheet.ok) throw new Error(`the system ${systemId} cannot be drawn: ${JSON.stringify(sheet.error)}`);
  return sheet.value;
}
