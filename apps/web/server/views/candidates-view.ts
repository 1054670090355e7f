import "server-only";
import type { Attempt, Database, Invitation } from "@probeworthy/database";
import {
  type CandidateLine,
  type CandidatesView,
  candidatesViewSchema,
} from "@/features/candidates/candidates-view";
import { loadScenarioOptions } from "./assignment-options";

export async function loadCandidates(
  database: Database,
  organisationId: string,
  now: Date,
): Promise<CandidatesView> {
  const [invitations, checks] = await Promise.all([
    database.invitations.list({ organisationId, now }),
    loadScenarioOptions(database, organisationId),
  ]);
  const candidates = await Promise.all(
    invitations
      .filter(({ assignmentId }) => assignmentId !== null)
      .map(async (invitation) =>
        toLine(invitation, await findCandidateAttempt(database, organisationId, invitation)),
      ),
  );
  return candidatesViewSchema.parse({ candidates, checks } satisfies CandidatesView);
}

/** The candidate's attempt at the check behind the link; undefined before it was begun. */
export async function findCandidateAttempt(
  database: Database,
  organisationId: string,
  { assignmentId, usedById }: Pick<Invitation, "assignmentId" | "usedById">,
): Promise<Attempt | undefined> {
  if (assignmentId === null || usedById === null) return undefined;
  const attempts = await database.attempts.listForAssignment({ organisationId, assignmentId });
  return attempts.find(({ learnerId }) => learnerId === usedById);
}

export function toLine(invitation: Invitation, attempt: Attempt | undefined): CandidateLine {
  const grade = attempt?.grade ?? null;

  return {
    id: invitation.id,
    name: invitation.name,
    email: invitation.email,
    title: invitation.assignmentTitle ?? "",
    state: stateOf(invitation, attempt),
    invitedAt: invitation.createdAt.toISOString(),
    expiresAt: invitation.expiresAt.toISOString(),
    score: grade?.score ?? null,
    passed: grade === null || attempt === undefined ? null : grade.score >= attempt.assignment.passMark,
    unread: grade?.status === "awaiting_review",
  };
}

function stateOf({ state }: Invitation, attempt: Attempt | undefined): CandidateLine["state"] {
  if (state !== "used") return state;
  if (attempt === undefined) return "used";
  if (attempt.status === "open") return attempt.sequence <= 1 ? "used" : "working";
  return attempt.grade === null ? "awaiting" : "graded";
}
