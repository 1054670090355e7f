import "server-only";
import type { Database } from "@probeworthy/database";
import { type NewScenarioOptions, newScenarioOptionsSchema } from "@/features/scenarios/new-scenario-view";

export async function loadNewScenarioOptions(
  database: Database,
  organisationId: string,
): Promise<NewScenarioOptions> {
  const [vehicles, scenarios] = await Promise.all([
    database.vehicles.list({ organisationId }),
    database.scenarios.list({ organisationId }),
  ]);
  return newScenarioOptionsSchema.parse({
    vehicles: vehicles.map(({ id, name }) => ({ id, name })),
    scenarios: scenarios.map(({ id, title, vehicleId }) => ({ id, title, vehicleId })),
  } satisfies NewScenarioOptions);
}
