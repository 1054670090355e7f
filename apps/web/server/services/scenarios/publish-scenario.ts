import "server-only";
import type { Database, ScenarioForAuthor } from "@probeworthy/database";
import type { ScenarioMessage } from "@/features/builder/builder-view";
import type { SessionUser } from "../../auth/session-user";
import { checkDraft } from "./check-draft";
import { requireLatestVehicle } from "./find-scenario";

export type PublishResult =
  | { readonly ok: true; readonly value: { readonly number: number } }
  | { readonly ok: false; readonly error: { readonly code: "no_draft" } }
  | {
      readonly ok: false;
      readonly error: { readonly code: "not_ready"; readonly messages: ScenarioMessage[] };
    };

/** Makes the draft the next version, which never changes again. */
export async function publishScenario(
  database: Database,
  { organisationId, userId }: Pick<SessionUser, "organisationId" | "userId">,
  scenario: ScenarioForAuthor,
): Promise<PublishResult> {
  if (scenario.draft === null) return { ok: false, error: { code: "no_draft" } };
  const vehicle = await requireLatestVehicle(database, organisationId, scenario.vehicleId);
  const checked = checkDraft(scenario.draft, vehicle.document);
  if (checked.scenario === undefined) {
    return { ok: false, error: { code: "not_ready", messages: checked.messages } };
  }
  const published = await database.scenarios.publish({
    organisationId,
    scenarioId: scenario.id,
    vehicleVersionId: vehicle.versionId,
    document: checked.scenario,
    createdById: userId,
  });
  if (!published.ok) throw new Error(`scenario ${scenario.id} disappeared while it was published`);
  return { ok: true, value: { number: published.value.number } };
}
