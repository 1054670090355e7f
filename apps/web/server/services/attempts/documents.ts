import "server-only";
import type { Database } from "@probeworthy/database";
import { type ScenarioDocument, scenarioSchema } from "@probeworthy/evaluation";
import { type VehicleDocument, vehicleDocumentSchema } from "@probeworthy/vehicle";
import { BoundedCache } from "./bounded-cache";

// Versions are immutable rows, so a parsed one never goes stale; keeping the same object also keeps what the
// evaluation package has prepared for it.
const vehicles = new BoundedCache<VehicleDocument>(16);
const scenarios = new BoundedCache<ScenarioDocument>(256);

interface VersionRef {
  readonly organisationId: string;
  readonly versionId: string;
}

/** @throws when the version is missing or not a vehicle: a foreign key and the publishing check promise otherwise. */
export async function loadVehicle(database: Database, ref: VersionRef): Promise<VehicleDocument> {
  const key = `${ref.organisationId}/${ref.versionId}`;
  const known = vehicles.get(key);
  if (known !== undefined) return known;
  const row = await database.vehicles.version(ref);
  if (row === null) throw new Error(`vehicle version ${ref.versionId} is missing`);
  const document = vehicleDocumentSchema.parse(row.document);
  vehicles.set(key, document);
  return document;
}

export interface LoadedScenario {
  readonly scenario: ScenarioDocument;
  readonly vehicleVersionId: string;
}

const vehicleVersionOf = new BoundedCache<string>(256);

/** @throws when the version is missing or not a scenario. */
export async function loadScenario(database: Database, ref: VersionRef): Promise<LoadedScenario> {
  const key = `${ref.organisationId}/${ref.versionId}`;
  const scenario = scenarios.get(key);
  const vehicleVersionId = vehicleVersionOf.get(key);
  if (scenario !== undefined && vehicleVersionId !== undefined) return { scenario, vehicleVersionId };
  const row = await database.scenarios.version(ref);
  if (row === null) throw new Error(`scenario version ${ref.versionId} is missing`);
  const parsed = scenarioSchema.parse(row.document);
  scenarios.set(key, parsed);
  vehicleVersionOf.set(key, row.vehicleVersionId);
  return { scenario: parsed, vehicleVersionId: row.vehicleVersionId };
}
