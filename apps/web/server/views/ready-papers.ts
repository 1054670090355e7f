import "server-only";
import type { Database } from "@probeworthy/database";
import type { AttemptOwner } from "../services/attempts/attempt-record";
import { loadScenario, loadVehicle } from "../services/attempts/documents";
import { chartRowsOf } from "./chart-rows";
import { loadSheet } from "./drawings";

/**
 * Lays out the drawings and simulates the terminal charts of the work a learner may take up next, so that the bay does
 * not keep them waiting. What is ready already costs a look into a cache.
 */
export async function readyPapers(
  database: Database,
  { organisationId }: Pick<AttemptOwner, "organisationId">,
  assignmentIds: readonly string[],
): Promise<void> {
  for (const assignmentId of assignmentIds) {
    const assignment = await database.assignments.get({ organisationId, assignmentId });
    if (assignment === null) continue;
    const { scenario, vehicleVersionId } = await loadScenario(database, {
      organisationId,
      versionId: assignment.scenarioVersionId,
    });
    const document = await loadVehicle(database, { organisationId, versionId: vehicleVersionId });
    await loadSheet({ database, organisationId, versionId: vehicleVersionId, document }, scenario.system);
    await chartRowsOf(vehicleVersionId, document, scenario.system);
  }
}
