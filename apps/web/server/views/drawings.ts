import "server-only";
import { type ConnectorFace, connectorFace, type Sheet } from "@probeworthy/diagram";
import { layoutSheet } from "@probeworthy/diagram/layout";
import type { VehicleDocument } from "@probeworthy/vehicle";
import { BoundedCache } from "../services/attempts/bounded-cache";

/** The drawn papers of one system, made from the vehicle as it leaves the works. */
export interface DrawnSystem {
  readonly sheet: Sheet;
  readonly faces: readonly { readonly wire: ConnectorFace; readonly terminal: ConnectorFace }[];
}

// Laying a sheet out takes about a second, and a vehicle version never changes.
const drawn = new BoundedCache<Promise<DrawnSystem>>(32);

export function loadDrawings(
  versionId: string,
  document: VehicleDocument,
  systemId: string,
): Promise<DrawnSystem> {
  const key = `${versionId}/${systemId}`;
  const known = drawn.get(key);
  if (known !== undefined) return known;
  const made = draw(document, systemId);
  drawn.set(key, made);
  return made;
}

async function draw(document: VehicleDocument, systemId: string): Promise<DrawnSystem> {
  const sheet = await layoutSheet(document, systemId);
  if (!sheet.ok) throw new Error(`the system ${systemId} cannot be drawn: ${JSON.stringify(sheet.error)}`);
  return {
    sheet: sheet.value,
    faces: document.connectors.flatMap(({ id }) => {
      const wire = connectorFace(document, id, "wire");
      const terminal = connectorFace(document, id, "terminal");
      return wire === undefined || terminal === undefined ? [] : [{ wire, terminal }];
    }),
  };
}
