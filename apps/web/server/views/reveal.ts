import "server-only";
import type { Attempt } from "@probeworthy/database";

export type RevealTerms = Pick<Attempt["assignment"], "reveal" | "closesAt">;

/** Whether the reasons of a grade and the fault itself may be shown to the learner now. */
export function mayReveal({ reveal, closesAt }: RevealTerms, now: Date): boolean {
  switch (reveal) {
    case "after_submission":
      return true;
    case "after_close":
      return closesAt !== null && now >= closesAt;
    case "never":
      return false;
  }
}
