import type { Database } from "@probeworthy/database";
import type { StarterContent } from "./content";

export interface PublishedScenario {
  scenarioVersionId: string;
  weights: unknown;
  passMark: number;
}

/**
 * Gives an organisation the training vehicle and its scenarios, or the newer versions of them. Answers the
 * published version of every scenario, by the id of its document.
 */
export async function publishStarterContent(
  database: Database,
  organisationId: string,
  content: StarterContent,
): Promise<Map<string, PublishedScenario>> {
  const vehicle = await publishVehicle(database, organisationId, content.vehicle);
  const published = new Map<string, PublishedScenario>();
  for (const document of content.scenarios) {
    const scenarioId = await ensureScenario(database, organisationId, vehicle.vehicleId, document);
    const version = await database.scenarios.publish({
      organisationId,
      scenarioId,
      vehicleVersionId: vehicle.versionId,
      document,
      createdById: null,
    });
    if (!version.ok) throw new Error(`scenario ${document.id} could not be published: ${version.error.code}`);
    const { weights, passMark } = document;
    published.set(document.id, { scenarioVersionId: version.value.id, weights, passMark });
  }
  return published;
}

async function publishVehicle(
  database: Database,
  organisationId: string,
  document: StarterContent["vehicle"],
): Promise<{ vehicleId: string; versionId: string }> {
  const known = await database.vehicles.findByKey({ organisationId, key: document.id });
  if (known === null) {
    const created = await database.vehicles.create({
      organisationId,
      key: document.id,
      name: document.title,
      document,
      createdById: null,
    });
    if (!created.ok) throw new Error(`vehicle ${document.id} could not be stored: ${created.error.code}`);
    return { vehicleId: created.value.id, versionId: created.value.versionId };
  }
  const version = await database.vehicles.createVersion({
    organisationId,
    vehicleId: known.id,
    document,
    createdById: null,
  });
  if (!version.ok) throw new Error(`vehicle ${document.id} could not be stored: ${version.error.code}`);
  return { vehicleId: known.id, versionId: version.value.id };
}

async function ensureScenario(
  database: Database,
  organisationId: string,
  vehicleId: string,
  { id, title }: { id: string; title: string },
): Promise<string> {
  const known = await database.scenarios.findByKey({ organisationId, key: id });
  if (known !== null) return known.id;
  const created = await database.scenarios.create({
    organisationId,
    key: id,
    title,
    vehicleId,
    draft: null,
    createdById: null,
  });
  if (!created.ok) throw new Error(`scenario ${id} could not be stored: ${created.error.code}`);
  return created.value.id;
}
