import "server-only";
import type { ClassSummary, Database } from "@probeworthy/database";
import type { Interval, Statistic, StatisticError } from "@probeworthy/gradebook";
import { kindTitle } from "@/features/statistics/kind-title";
import {
  type Measured,
  type StatisticsView,
  statisticsViewSchema,
} from "@/features/statistics/statistics-view";
import { loadClassStatistics } from "../services/statistics/class-statistics";

/** Statistics of a class the caller may see. Names no learner. */
export async function loadStatistics(
  database: Database,
  organisationId: string,
  { id, title, term }: Pick<ClassSummary, "id" | "title" | "term">,
): Promise<StatisticsView> {
  const found = await loadClassStatistics(database, { organisationId, classId: id });
  const { reliability, confusion } = found;
  return statisticsViewSchema.parse({
    classId: id,
    title,
    term,
    attempts: found.attempts,
    withoutReport: found.withoutReport,
    items: found.items.map(({ assignmentId, title: item, difficulty, discrimination }) => ({
      assignmentId,
      title: item,
      difficulty: toMeasured(difficulty, ({ share, interval }) => [share, interval]),
      attempts: difficulty.ok ? difficulty.value.attempts : null,
      discrimination: toMeasured(discrimination, ({ corrected }) => [corrected.r, corrected.interval]),
    })),
    reliability: {
      alpha: toMeasured(reliability, ({ alpha, interval }) => [alpha, interval]),
      scale: reliability.ok
        ? {
            items: reliability.value.items,
            mean: reliability.value.mean,
            standardDeviation: reliability.value.standardDeviation,
            standardError: reliability.value.standardError,
          }
        : null,
      jointItems: found.jointItems,
      complete: found.complete,
      incomplete: found.incomplete,
    },
    confusion: {
      kinds: confusion.kinds.map(kindTitle),
      rows: confusion.rows.map(({ kind, counts, attempts, right, takenFor }) => ({
        kind: kindTitle(kind),
        counts: [...counts],
        attempts,
        right: toMeasured(right, ({ share, interval }) => [share, interval]),
        takenFor: takenFor === null ? null : kindTitle(takenFor.kind),
      })),
      attempts: confusion.attempts,
      severalFaults: confusion.severalFaults,
      severalNamed: confusion.severalNamed,
    },
  } satisfies StatisticsView);
}

function toMeasured<T>(
  statistic: Statistic<T>,
  read: (value: T) => readonly [value: number, interval: Interval],
): Measured {
  if (!statistic.ok) return { known: false, why: whyUnknown(statistic.error) };
  const [value, { low, high }] = read(statistic.value);
  return { known: true, value, low, high };
}

function whyUnknown(error: StatisticError): string {
  switch (error.code) {
    case "too_few_attempts":
      return `Too few attempts: ${error.have} of the ${error.need} it takes`;
    case "too_few_items":
      return `Too few assignments: ${error.have} of the ${error.need} it takes`;
    case "no_spread":
      return "Everybody did the same: nothing to compare";
    case "no_finite_estimate":
    case "no_convergence":
      return "These answers fix no figure";
    case "invalid_input":
      throw new Error(`statistics were asked of something that is none: ${error.path} ${error.detail}`);
  }
}
