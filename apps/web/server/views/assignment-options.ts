import "server-only";
import type { ClassSummary, Database } from "@probeworthy/database";
import {
  type AssignmentOptions,
  assignmentOptionsSchema,
} from "@/features/assignments/assignment-options-view";
import { loadScenario } from "../services/attempts/documents";

export async function loadAssignmentOptions(
  database: Database,
  organisationId: string,
  { id, title }: ClassSummary,
): Promise<AssignmentOptions> {
  const scenarios = await loadScenarioOptions(database, organisationId);
  return assignmentOptionsSchema.parse({
    classId: id,
    classTitle: title,
    scenarios,
  } satisfies AssignmentOptions);
}

/** The newest published version of every scenario that is in use. */
export async function loadScenarioOptions(
  database: Database,
  organisationId: string,
): Promise<AssignmentOptions["scenarios"]> {
  const summaries = await database.scenarios.list({ organisationId });
  const options = summaries.map(async ({ id, title, latestVersion }) => {
    if (latestVersion === null) return [];
    const { scenario } = await loadScenario(database, { organisationId, versionId: latestVersion.id });
    const { level, learningGoal, limits, weights, passMark } = scenario;
    return [
      {
        scenarioId: id,
        versionId: latestVersion.id,
        title,
        number: latestVersion.number,
        level,
        goal: learningGoal,
        shopMinutes: limits.shopMinutes,
        weights,
        passMark,
      },
    ];
  });
  return (await Promise.all(options)).flat();
}
