import "server-only";
import { randomBytes } from "node:crypto";
import type { Database } from "@probeworthy/database";
import { weightsSchema } from "@probeworthy/evaluation";
import { engineVersion, makeVariant } from "@probeworthy/evaluation/server";
import { type AttemptOwner, recordHandOver } from "./attempt-record";
import { loadScenario, loadVehicle } from "./documents";

export type StartAttemptResult =
  | { readonly ok: true; readonly value: { readonly attemptId: string } }
  | {
      readonly ok: false;
      readonly error: {
        readonly code: "not_found" | "not_open_yet" | "closed" | "attempt_limit_reached";
        readonly message: string;
      };
    };

/**
 * Draws a variant and hands the car over. Asking again while an attempt is open answers with that one, so a second
 * click or a lost answer never costs an attempt.
 */
export async function startAttempt(
  database: Database,
  owner: AttemptOwner,
  assignmentId: string,
  now: Date,
): Promise<StartAttemptResult> {
  const { organisationId, userId: learnerId } = owner;
  const unknown = { ok: false, error: { code: "not_found", message: "There is no such job." } } as const;
  const forLearner = await database.assignments.getForLearner({ organisationId, assignmentId, learnerId });
  if (forLearner === null) return unknown;
  if (forLearner.openAttemptId !== null) return { ok: true, value: { attemptId: forLearner.openAttemptId } };
  const assignment = await database.assignments.get({ organisationId, assignmentId });
  if (assignment === null) return unknown;

  const { scenarioVersionId } = assignment;
  const { scenario, vehicleVersionId } = await loadScenario(database, {
    organisationId,
    versionId: scenarioVersionId,
  });
  const document = await loadVehicle(database, { organisationId, versionId: vehicleVersionId });
  const variantSeed = randomBytes(16).toString("hex");
  const variant = makeVariant(scenario, document, variantSeed);
  if (!variant.ok) {
    throw new Error(
      `scenario version ${scenarioVersionId} gives no variant: ${variant.error.message} (${variant.error.path})`,
    );
  }
  const started = await database.attempts.start({
    organisationId,
    assignmentId,
    learnerId,
    scenarioVersionId,
    variantSeed,
    variant: variant.value,
    engineVersion,
    now,
  });
  if (!started.ok) {
    const { error } = started;
    switch (error.code) {
      case "already_open":
        return { ok: true, value: { attemptId: error.attemptId } };
      case "not_found":
        return unknown;
      case "not_open_yet":
        return refuse("not_open_yet", "This job is not open yet. The list of jobs says when it opens.");
      case "closed":
        return refuse("closed", "This job is closed. Ask your instructor if you still need it.");
      case "attempt_limit_reached":
        return refuse(
          "attempt_limit_reached",
          error.limit === 1
            ? "This job can be done once, and you have done it."
            : `This job can be done ${error.limit} times, and you have used them all.`,
        );
    }
  }
  const attemptId = started.value.id;
  await recordHandOver(
    database,
    organisationId,
    { id: attemptId, learnerId },
    {
      scenario: {
        ...scenario,
        title: assignment.title,
        weights: weightsSchema.parse(assignment.weights),
        passMark: assignment.passMark,
      },
      document,
      variant: variant.value,
    },
  );
  return { ok: true, value: { attemptId } };
}

function refuse(code: "not_open_yet" | "closed" | "attempt_limit_reached", message: string) {
  return { ok: false, error: { code, message } } as const;
}
