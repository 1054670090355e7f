import "server-only";
import type { Database } from "@probeworthy/database";
import type { CandidateInput } from "@/features/candidates/candidate-input";
import type { SessionUser } from "../../auth/session-user";
import { loadScenario } from "../attempts/documents";

export type InviteResult =
  | { readonly ok: true; readonly value: { readonly id: string; readonly path: string } }
  | { readonly ok: false; readonly error: { readonly code: "unknown_scenario" } };

const dayMilliseconds = 24 * 60 * 60 * 1000;

/** A single-use link to one attempt at one check. The token leaves the server here and never again. */
export async function inviteCandidate(
  database: Database,
  { organisationId, userId }: Pick<SessionUser, "organisationId" | "userId">,
  input: CandidateInput,
  now: Date,
): Promise<InviteResult> {
  const unknown = { ok: false, error: { code: "unknown_scenario" } } as const;
  const { scenarioVersionId, title, passMark, reveal } = input;
  const version = await database.scenarios.version({ organisationId, versionId: scenarioVersionId });
  if (version === null) return unknown;
  const { scenario } = await loadScenario(database, { organisationId, versionId: scenarioVersionId });
  const invited = await database.invitations.create({
    organisationId,
    createdById: userId,
    email: input.email,
    name: input.name,
    role: "learner",
    assignment: {
      title,
      scenarioVersionId,
      mode: "check",
      opensAt: null,
      closesAt: null,
      attemptLimit: 1,
      weights: scenario.weights,
      passMark,
      reveal,
    },
    expiresAt: new Date(now.getTime() + input.days * dayMilliseconds),
  });
  if (!invited.ok) return unknown;
  const { id, token } = invited.value;
  return { ok: true, value: { id, path: `/invitations/${token}` } };
}
