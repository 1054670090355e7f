import "server-only";
import type { Database, ScenarioForAuthor } from "@probeworthy/database";
import { type ScenarioDocument, scenarioSchema } from "@probeworthy/evaluation";
import type { VehicleDocument } from "@probeworthy/vehicle";
import { describeTemplate } from "@/features/builder/fault-forms";
import { type ScenarioView, scenarioViewSchema } from "@/features/scenarios/scenario-view";
import type { SessionUser } from "../auth/session-user";
import { loadVehicle } from "../services/attempts/documents";
import { loadClasses } from "./classes-view";
import { isStarter } from "./scenarios-view";

/** The newest published version for staff; with only a draft, its name and the way on. */
export async function loadScenarioView(
  database: Database,
  user: SessionUser,
  scenario: ScenarioForAuthor,
): Promise<ScenarioView> {
  const { organisationId, role } = user;
  const version = await database.scenarios.latestVersion({ organisationId, scenarioId: scenario.id });
  const document = version === null ? null : scenarioSchema.parse(version.document);
  const vehicle =
    version === null
      ? undefined
      : await loadVehicle(database, { organisationId, versionId: version.vehicleVersionId });
  const teaches = role === "instructor" || role === "administrator";
  const { classes } = teaches ? await loadClasses(database, user) : { classes: [] };
  return scenarioViewSchema.parse({
    id: scenario.id,
    title: scenario.title,
    starter: isStarter(scenario.key),
    vehicleId: scenario.vehicleId,
    vehicleName: scenario.vehicleName,
    systemTitle: vehicle?.systems.find(({ id }) => id === document?.system)?.title ?? null,
    hasDraft: scenario.hasDraft,
    version:
      version === null ? null : { number: version.number, publishedAt: version.publishedAt.toISOString() },
    document,
    pool: document === null ? [] : toPool(document),
    startConditions: document === null || vehicle === undefined ? [] : toConditions(document, vehicle),
    classes: classes.map(({ id, title }) => ({ id, title })),
  } satisfies ScenarioView);
}

function toPool({ pool }: ScenarioDocument): ScenarioView["pool"] {
  const sum = pool.reduce((total, { weight }) => total + weight, 0);
  return pool.map(({ id, title, weight, normal, faults }) => ({
    id,
    title,
    share: weight / sum,
    normal: normal === true,
    faults: faults.map(describeTemplate),
  }));
}

function toConditions({ startConditions }: ScenarioDocument, vehicle: VehicleDocument): string[] {
  return Object.entries(startConditions).map(([name, value]) => {
    const condition = vehicle.conditions.find((one) => one.name === name);
    if (condition?.kind === "number") return `${condition.title}: ${value} ${condition.unit}`;
    const option = condition?.options.find((one) => one.value === value);
    return `${condition?.title ?? name}: ${option?.title ?? value}`;
  });
}
