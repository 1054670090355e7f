import "server-only";
import { type ScenarioDocument, scenarioSchema } from "@probeworthy/evaluation";
import { checkScenario } from "@probeworthy/evaluation/server";
import type { VehicleDocument } from "@probeworthy/vehicle";
import type { ScenarioMessage } from "@/features/builder/builder-view";
import { friendlyIssue, friendlyMessage } from "@/features/builder/friendly-issue";

export interface CheckedDraft {
  /** Present when the draft is a scenario this vehicle can be worked with. */
  readonly scenario: ScenarioDocument | undefined;
  readonly messages: ScenarioMessage[];
}

/** What keeps a draft from being published, and what looks like an oversight. */
export function checkDraft(draft: unknown, vehicle: VehicleDocument): CheckedDraft {
  const parsed = scenarioSchema.safeParse(draft, { error: (issue) => friendlyIssue(issue) });
  if (!parsed.success) {
    return {
      scenario: undefined,
      messages: parsed.error.issues.map(({ path, message }) => ({
        stage: "schema",
        severity: "error",
        path: path.map(String).join("."),
        message: friendlyMessage(message),
      })),
    };
  }
  const messages = checkScenario(parsed.data, vehicle).map(
    ({ severity, path, message }): ScenarioMessage => ({
      stage: "check",
      severity,
      path: path.replace(/\[(\d+)\]/g, ".$1"),
      message: friendlyMessage(message),
    }),
  );
  const stands = messages.every(({ severity }) => severity !== "error");
  return { scenario: stands ? parsed.data : undefined, messages };
}
