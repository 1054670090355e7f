import "server-only";
import { randomBytes } from "node:crypto";
import type { Database } from "@probeworthy/database";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { parseVehicleDraft } from "@probeworthy/vehicle";
import { extractSystem } from "@probeworthy/vehicle/authoring";
import type { NewVehicle } from "@/features/authoring/authoring-input";
import { blankVehicle } from "@/features/authoring/start/blank-vehicle";
import { vehicleFromLists } from "@/features/authoring/start/vehicle-from-lists";
import { slug } from "@/features/builder/scenario-form";
import type { SessionUser } from "../../auth/session-user";

interface FieldError {
  readonly path: string;
  readonly message: string;
}

type Made =
  | { readonly ok: true; readonly value: Readonly<Record<string, unknown>> }
  | { readonly ok: false; readonly errors: readonly FieldError[] };

export type CreateVehicleResult =
  | { readonly ok: true; readonly value: { readonly id: string; readonly title: string } }
  | { readonly ok: false; readonly errors: readonly FieldError[] };

/** A new own vehicle as a draft, from whatever the author starts with. */
export async function createVehicle(
  database: Database,
  { organisationId }: Pick<SessionUser, "organisationId">,
  input: NewVehicle,
): Promise<CreateVehicleResult> {
  // The key is in every log of this vehicle, so it never changes with the title.
  const stem = slug(input.title ?? "") || "vehicle";
  const key = `${stem.slice(0, 40)}-${randomBytes(3).toString("hex")}`;
  const made = make(key, input);
  if (!made.ok) return made;
  const title =
    typeof made.value.title === "string" && made.value.title !== "" ? made.value.title : "Vehicle";
  const created = await database.vehicles.createDraft({
    organisationId,
    key,
    name: title,
    draft: made.value,
    savedAt: new Date(),
  });
  if (!created.ok) throw new Error(`the vehicle ${key} could not be made: ${created.error.code}`);
  return { ok: true, value: { id: created.value.id, title } };
}

function make(key: string, input: NewVehicle): Made {
  switch (input.start) {
    case "blank":
      return { ok: true, value: blankVehicle(key, input.title) };
    case "training": {
      const extracted = extractSystem(trainingVehicle, input.systems);
      return extracted.ok
        ? { ok: true, value: { ...extracted.value, id: key, title: input.title } }
        : refuse("systems", `The training vehicle has no system ${extracted.error.systems.join(", ")}.`);
    }
    case "lists":
      return { ok: true, value: vehicleFromLists(key, input.title, input).document };
    case "json": {
      const parsed = parseVehicleDraft(input.document);
      if (parsed.ok)
        return { ok: true, value: { ...parsed.value, id: key, title: input.title ?? parsed.value.title } };
      if (parsed.error.code !== "invalid_document")
        throw new Error(`a file was refused: ${parsed.error.code}`);
      return { ok: false, errors: parsed.error.messages.map(({ path, message }) => ({ path, message })) };
    }
  }
}

const refuse = (path: string, message: string): Made => ({ ok: false, errors: [{ path, message }] });
