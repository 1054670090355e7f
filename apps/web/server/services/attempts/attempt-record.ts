import "server-only";
import type { Attempt, Database } from "@probeworthy/database";
import { type AttemptEvent, attemptEventSchema, weightsSchema } from "@probeworthy/evaluation";
import {
  type AttemptContext,
  type AttemptState,
  evolve,
  openAttempt,
  replay,
  variantSchema,
} from "@probeworthy/evaluation/server";
import { z } from "zod";
import type { SessionUser } from "../../auth/session-user";
import { BoundedCache } from "./bounded-cache";
import { loadScenario, loadVehicle } from "./documents";

export type AttemptOwner = Pick<SessionUser, "userId" | "organisationId">;

/** An attempt with everything needed to go on with it. Holds secrets: never hand one to a page. */
export interface AttemptRecord {
  readonly attempt: Attempt;
  readonly vehicleVersionId: string;
  readonly context: AttemptContext;
  readonly events: readonly AttemptEvent[];
  readonly state: AttemptState;
}

interface Replayed {
  readonly vehicleVersionId: string;
  readonly context: AttemptContext;
  readonly events: readonly AttemptEvent[];
  readonly state: AttemptState;
}

/** Replayed logs by attempt. Only a help: the counter in the database decides whether one still holds. */
const replayed = new BoundedCache<Replayed>(300);

/** The owner's own attempt; undefined for an unknown one and for anybody else's. */
export async function loadOwnAttempt(
  database: Database,
  owner: AttemptOwner,
  attemptId: string,
): Promise<AttemptRecord | undefined> {
  const { organisationId, userId } = owner;
  const attempt = await database.attempts.getForLearner({ organisationId, attemptId, learnerId: userId });
  return attempt === null ? undefined : loadRecord(database, organisationId, attempt);
}

/** Rebuilds the state from the log. The caller has checked that the person may see this attempt. */
export async function loadRecord(
  database: Database,
  organisationId: string,
  attempt: Attempt,
): Promise<AttemptRecord> {
  const cached = replayed.get(attempt.id);
  if (cached !== undefined && cached.state.sequence === attempt.sequence) return { attempt, ...cached };
  const { context, vehicleVersionId } = cached ?? (await loadContext(database, organisationId, attempt));
  const rows = await database.attempts.eventsWithWorld({ organisationId, attemptId: attempt.id });
  const events =
    rows.length === 0
      ? await recordHandOver(database, organisationId, attempt, context)
      : z.array(attemptEventSchema).parse(rows.map(toEvent));
  const fresh = { vehicleVersionId, context, events, state: replay(events) };
  replayed.set(attempt.id, fresh);
  return { attempt: { ...attempt, sequence: fresh.state.sequence }, ...fresh };
}

/** After an event was stored: saves the next request from reading the whole log. */
export function noteAppended(record: AttemptRecord, event: AttemptEvent): AttemptRecord {
  const { attempt, vehicleVersionId, context, events, state } = record;
  const next = { vehicleVersionId, context, events: [...events, event], state: evolve(state, event) };
  replayed.set(attempt.id, next);
  const status = next.state.status === "submitted" ? "submitted" : attempt.status;
  return { attempt: { ...attempt, sequence: event.sequence, status }, ...next };
}

async function loadContext(
  database: Database,
  organisationId: string,
  attempt: Attempt,
): Promise<Pick<Replayed, "context" | "vehicleVersionId">> {
  const secrets = await database.attempts.getSecrets({ organisationId, attemptId: attempt.id });
  if (secrets === null) throw new Error(`attempt ${attempt.id} disappeared while it was read`);
  const { scenario } = await loadScenario(database, { organisationId, versionId: secrets.scenarioVersionId });
  const document = await loadVehicle(database, { organisationId, versionId: secrets.vehicleVersionId });
  const context: AttemptContext = {
    // The assignment decides what is shown as the title, how lines weigh and where the pass mark lies.
    scenario: {
      ...scenario,
      title: attempt.assignment.title,
      weights: weightsSchema.parse(secrets.weights),
      passMark: attempt.assignment.passMark,
    },
    document,
    variant: variantSchema.parse(secrets.variant),
  };
  return { context, vehicleVersionId: secrets.vehicleVersionId };
}

/**
 * Line 1 of the log. Usually written when the attempt starts; written here when the server stopped in between. Of two
 * requests that both find the log empty one writes it, and both computed the same line.
 */
export async function recordHandOver(
  database: Database,
  organisationId: string,
  attempt: Pick<Attempt, "id" | "learnerId">,
  context: AttemptContext,
): Promise<AttemptEvent[]> {
  const opened = openAttempt(context);
  if (!opened.ok)
    throw new Error(`the car of attempt ${attempt.id} cannot be handed over: ${opened.error.message}`);
  const [event] = opened.value.events;
  if (event === undefined) throw new Error("an opened attempt has its first line");
  const appended = await database.attempts.appendEvent({
    organisationId,
    attemptId: attempt.id,
    learnerId: attempt.learnerId,
    expectedSequence: 0,
    ...toStored(event),
    recordedAt: new Date(),
  });
  if (!appended.ok && appended.error.code !== "stale_sequence") {
    throw new Error(`the first line of attempt ${attempt.id} was not stored: ${appended.error.code}`);
  }
  return [event];
}

/** How an event lies in its row. */
export function toStored(event: AttemptEvent) {
  const { command, observation, elapsedSeconds, world } = event;
  return { command, observation, cost: null, elapsedSeconds, world };
}

function toEvent(row: {
  sequence: number;
  command: unknown;
  observation: unknown;
  elapsedSeconds: number;
  world: unknown;
}) {
  const { sequence, command, observation, elapsedSeconds, world } = row;
  return { sequence, command, observation, elapsedSeconds, world };
}
