import "server-only";
import type { Database, VehicleForAuthor } from "@probeworthy/database";
import type { DocumentMessage } from "@probeworthy/vehicle";
import { checkDraft } from "@probeworthy/vehicle/authoring";
import type { SessionUser } from "../../auth/session-user";
import { draftOf } from "./find-vehicle";

export type PublishVehicleResult =
  | { readonly ok: true; readonly value: { readonly number: number } }
  | {
      readonly ok: false;
      readonly error:
        | { readonly code: "changed" }
        | { readonly code: "incomplete"; readonly messages: readonly DocumentMessage[] };
    };

/** Makes the draft the author has seen the next version. */
export async function publishVehicle(
  database: Database,
  { organisationId, userId }: Pick<SessionUser, "organisationId" | "userId">,
  vehicle: VehicleForAuthor,
  seenAt: Date,
): Promise<PublishVehicleResult> {
  if (vehicle.updatedAt.getTime() !== seenAt.getTime()) return { ok: false, error: { code: "changed" } };
  const { document, messages } = checkDraft(await draftOf(database, organisationId, vehicle));
  const errors = messages.filter(({ severity }) => severity === "error");
  if (document === undefined || errors.length > 0)
    return { ok: false, error: { code: "incomplete", messages: errors } };
  const published = await database.vehicles.createVersion({
    organisationId,
    vehicleId: vehicle.id,
    document,
    createdById: userId,
  });
  if (!published.ok) throw new Error(`vehicle ${vehicle.id} disappeared while it was published`);
  await database.vehicles.dropDraft({ organisationId, vehicleId: vehicle.id, seenAt });
  return { ok: true, value: { number: published.value.number } };
}
