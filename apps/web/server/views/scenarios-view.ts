import "server-only";
import type { Database, ScenarioSummary } from "@probeworthy/database";
import { starterScenarios } from "@probeworthy/training-vehicle";
import { z } from "zod";
import {
  type ScenarioLine,
  type ScenariosView,
  scenariosViewSchema,
} from "@/features/scenarios/scenarios-view";
import { requireLatestVehicle } from "../services/scenarios/find-scenario";

const starterKeys = new Set(starterScenarios.map(({ id }) => id));

export const isStarter = (key: string): boolean => starterKeys.has(key);

/** What a list says of a document, whole or half done. */
const tellingSchema = z.object({
  level: z.enum(["starter", "intermediate", "advanced"]).nullable().catch(null),
  system: z.string().nullable().catch(null),
  pool: z.array(z.unknown()).nullable().catch(null),
});

export async function loadScenarios(database: Database, organisationId: string): Promise<ScenariosView> {
  const [summaries, vehicles] = await Promise.all([
    database.scenarios.list({ organisationId }),
    database.vehicles.list({ organisationId }),
  ]);
  return scenariosViewSchema.parse({
    scenarios: await Promise.all(summaries.map((summary) => toLine(database, organisationId, summary))),
    vehicles: vehicles.map(({ id, name }) => ({ id, name })),
  } satisfies ScenariosView);
}

async function toLine(
  database: Database,
  organisationId: string,
  summary: ScenarioSummary,
): Promise<ScenarioLine> {
  const ref = { organisationId, scenarioId: summary.id };
  const saved =
    summary.latestVersion === null
      ? (await database.scenarios.find(ref))?.draft
      : (await database.scenarios.latestVersion(ref))?.document;
  const { level, system, pool } = tellingSchema.parse(Object(saved ?? {}));
  const { document } = await requireLatestVehicle(database, organisationId, summary.vehicleId);
  return {
    id: summary.id,
    title: summary.title,
    starter: isStarter(summary.key),
    level,
    systemTitle: document.systems.find(({ id }) => id === system)?.title ?? null,
    vehicleName: summary.vehicleName,
    candidates: pool?.length ?? null,
    published: summary.latestVersion?.number ?? null,
    hasDraft: summary.hasDraft,
    updatedAt: summary.updatedAt.toISOString(),
  };
}
