import "server-only";
import type { Database, ReportOfClass } from "@probeworthy/database";
import { commandSchema } from "@probeworthy/evaluation";
import { type Diagnosis, diagnosisOf, variantSchema } from "@probeworthy/evaluation/server";
import {
  type Answer,
  attemptsForDiscrimination,
  type ConfusionMatrix,
  confusionMatrix,
  type ItemStatistics,
  itemDifficulty,
  itemDiscriminations,
  type JointTable,
  jointTable,
  type Reliability,
  reliability,
  type Statistic,
} from "@probeworthy/gradebook";
import { loadScenario, loadVehicle } from "../attempts/documents";

export interface ClassStatistics {
  /** An item is an assignment; right is a report whose cause is right. */
  readonly items: readonly (ItemStatistics & { readonly assignmentId: string })[];
  readonly reliability: Statistic<Reliability>;
  /** Assignments that enough learners handed in to be looked at together. */
  readonly jointItems: number;
  /** Learners who handed in all of those, and learners who handed in only some. */
  readonly complete: number;
  readonly incomplete: number;
  readonly confusion: ConfusionMatrix;
  /** Attempts counted, and those of them closed without a report: never right, and nothing was named. */
  readonly attempts: number;
  readonly withoutReport: number;
}

interface Judged {
  readonly assignmentId: string;
  readonly learnerId: string;
  readonly diagnosis: Diagnosis | null;
}

/**
 * Only a learner's first attempt at an assignment counts: at a later one they know what the first was about, and who may
 * try more often would look more able. The caller has checked who may see the class.
 */
export async function loadClassStatistics(
  database: Database,
  ref: { readonly organisationId: string; readonly classId: string },
): Promise<ClassStatistics> {
  const [assignments, reports] = await Promise.all([
    database.assignments.listForClass(ref),
    database.attempts.reportsOfClass(ref),
  ]);
  const judged: Judged[] = [];
  // One after the other: the first of a scenario version fills the cache for the others.
  for (const report of firstOfEach(reports)) judged.push(await judge(database, ref.organisationId, report));

  const byLearner = new Map<string, Map<string, Answer>>();
  for (const { learnerId, assignmentId, diagnosis } of judged) {
    const own = byLearner.get(learnerId) ?? new Map<string, Answer>();
    byLearner.set(learnerId, own.set(assignmentId, diagnosis?.causeCorrect === true ? 1 : 0));
  }
  const answers = [...byLearner.values()].map((own) => assignments.map(({ id }) => own.get(id) ?? null));
  const joint = jointTable(answers, attemptsForDiscrimination);
  const discriminations = itemDiscriminations(joint.rows);
  return {
    items: assignments.map(({ id, title }, item) => {
      const given = answers.map((row) => row[item] ?? null);
      return {
        assignmentId: id,
        title,
        difficulty: itemDifficulty(given),
        discrimination: discriminationOf(discriminations, joint, item, given),
      };
    }),
    reliability: reliability(joint.rows, "attemptsLessOne"),
    jointItems: joint.items.length,
    complete: joint.rows.length,
    incomplete: joint.leftOut,
    confusion: confusionMatrix(judged.flatMap(({ diagnosis }) => (diagnosis === null ? [] : [diagnosis]))),
    attempts: judged.length,
    withoutReport: judged.filter(({ diagnosis }) => diagnosis === null).length,
  };
}

function firstOfEach(reports: readonly ReportOfClass[]): readonly ReportOfClass[] {
  const first = new Map<string, ReportOfClass>();
  for (const report of reports) {
    const key = `${report.assignmentId}/${report.learnerId}`;
    const known = first.get(key);
    if (known === undefined || report.number < known.number) first.set(key, report);
  }
  return [...first.values()];
}

async function judge(database: Database, organisationId: string, row: ReportOfClass): Promise<Judged> {
  const { assignmentId, learnerId } = row;
  const command = commandSchema.safeParse(row.lastCommand);
  if (!command.success || command.data.type !== "submitReport") {
    return { assignmentId, learnerId, diagnosis: null };
  }
  const { scenario } = await loadScenario(database, { organisationId, versionId: row.scenarioVersionId });
  const document = await loadVehicle(database, { organisationId, versionId: row.vehicleVersionId });
  const context = { scenario, document, variant: variantSchema.parse(row.variant) };
  return { assignmentId, learnerId, diagnosis: diagnosisOf(context, command.data.report) };
}

function discriminationOf(
  all: ReturnType<typeof itemDiscriminations>,
  { items }: JointTable,
  item: number,
  given: readonly Answer[],
): ItemStatistics["discrimination"] {
  const have = given.filter((answer) => answer !== null).length;
  const among = items.indexOf(item);
  // Also in a class without any report, where the joint table has no columns.
  if (among < 0) {
    return { ok: false, error: { code: "too_few_attempts", have, need: attemptsForDiscrimination } };
  }
  if (!all.ok) return all;
  const one = all.value[among];
  if (one === undefined) throw new Error(`no discrimination was worked out for item ${item}`);
  return one;
}
