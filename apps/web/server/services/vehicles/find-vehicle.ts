import "server-only";
import type { Database, VehicleForAuthor } from "@probeworthy/database";

/** One of the organisation's own vehicles; supplied and archived ones answer like unknown ones. */
export async function findOwnVehicle(
  database: Database,
  organisationId: string,
  vehicleId: string,
): Promise<VehicleForAuthor | undefined> {
  const found = await database.vehicles.find({ organisationId, vehicleId });
  return found === null || !found.isOwn || found.archivedAt !== null ? undefined : found;
}

/** What is worked on: the draft, or the newest version while nothing has been changed since. */
export async function draftOf(
  database: Database,
  organisationId: string,
  vehicle: VehicleForAuthor,
): Promise<Record<string, unknown>> {
  if (vehicle.hasDraft) return Object(vehicle.draft) as Record<string, unknown>;
  const version = await database.vehicles.latestVersion({ organisationId, vehicleId: vehicle.id });
  if (version === null) throw new Error(`vehicle ${vehicle.id} has neither a draft nor a version`);
  return Object(version.document) as Record<string, unknown>;
}
