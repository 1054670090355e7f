import { type Command, type LearnerView, learnerViewSchema } from "@probeworthy/evaluation";
import { z } from "zod";
import { type Problem, problemSchema } from "@/features/http/problem";

/** A stale sequence comes back with the view as it is now, so that the page can catch up. */
const staleSchema = problemSchema.extend({ view: learnerViewSchema });
export const commandAnswerSchema = z.strictObject({ view: learnerViewSchema });

export type CommandOutcome =
  | { readonly kind: "done"; readonly view: LearnerView }
  /** Somebody (another tab) was faster; nothing of ours was recorded. */
  | { readonly kind: "stale"; readonly view: LearnerView }
  | { readonly kind: "refused"; readonly problem: Problem }
  /** No answer: we cannot know whether it was recorded. Sending the same again is safe. */
  | { readonly kind: "unreachable" };

export interface CommandRequest {
  readonly attemptId: string;
  readonly expectedSequence: number;
  readonly command: Command;
}

/** Gives one command to the server. Safe to repeat: the sequence makes sure that it counts once. */
export async function sendCommand({
  attemptId,
  expectedSequence,
  command,
}: CommandRequest): Promise<CommandOutcome> {
  let response: Response;
  let body: unknown;
  try {
    response = await fetch(`/api/attempts/${encodeURIComponent(attemptId)}/commands`, {
      method: "POST",
      credentials: "same-origin",
      cache: "no-store",
      headers: { "Content-Type": "application/json", Accept: "application/json, application/problem+json" },
      body: JSON.stringify({ expectedSequence, command }),
    });
    body = await response.json();
  } catch {
    // Offline, cut in the middle, or an answer that is not ours (a proxy's error page).
    return { kind: "unreachable" };
  }
  if (response.ok) return { kind: "done", view: commandAnswerSchema.parse(body).view };
  const stale = staleSchema.safeParse(body);
  if (response.status === 409 && stale.success) {
    const { view } = stale.data;
    return { kind: isRecorded(view, expectedSequence, command) ? "done" : "stale", view };
  }
  const problem = problemSchema.safeParse(body);
  if (!problem.success || problem.data.status === 503) return { kind: "unreachable" };
  return { kind: "refused", problem: problem.data };
}

/** True when the line after `expectedSequence` is this very command: an earlier send got through, its answer did not. */
export function isRecorded(
  view: Pick<LearnerView, "log">,
  expectedSequence: number,
  command: Command,
): boolean {
  const line = view.log.find((candidate) => candidate.sequence === expectedSequence + 1);
  return line !== undefined && canonicalText(line.command) === canonicalText(command);
}

function canonicalText(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) =>
    typeof part === "object" && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}
