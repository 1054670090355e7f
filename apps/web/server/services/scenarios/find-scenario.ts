import "server-only";
import type { Database, ScenarioForAuthor } from "@probeworthy/database";
import type { VehicleDocument } from "@probeworthy/vehicle";
import { loadVehicle } from "../attempts/documents";

/** A scenario an author may work on; archived ones answer like unknown ones. */
export async function findScenario(
  database: Database,
  organisationId: string,
  scenarioId: string,
): Promise<ScenarioForAuthor | undefined> {
  const found = await database.scenarios.find({ organisationId, scenarioId });
  return found === null || found.archivedAt !== null ? undefined : found;
}

export interface LatestVehicle {
  readonly versionId: string;
  readonly document: VehicleDocument;
}

/** The newest version of a vehicle: what a draft is written against. */
export async function loadLatestVehicle(
  database: Database,
  organisationId: string,
  vehicleId: string,
): Promise<LatestVehicle | undefined> {
  const version = await database.vehicles.latestVersion({ organisationId, vehicleId });
  if (version === null) return undefined;
  return {
    versionId: version.id,
    document: await loadVehicle(database, { organisationId, versionId: version.id }),
  };
}

/** As {@link loadLatestVehicle} for a vehicle a foreign key promises. */
export async function requireLatestVehicle(
  database: Database,
  organisationId: string,
  vehicleId: string,
): Promise<LatestVehicle> {
  const vehicle = await loadLatestVehicle(database, organisationId, vehicleId);
  if (vehicle === undefined) throw new Error(`vehicle ${vehicleId} has no version`);
  return vehicle;
}
