import { parseVehicle } from "../document/parse-vehicle";
import type { VehicleDocument } from "../document/vehicle-document";
import type { DocumentMessage } from "../simulation/types";
import { validateVehicle } from "../validate/validate-vehicle";

export interface CheckedDraft {
  /** Present when the draft can be compiled and simulated as it stands. */
  readonly document: VehicleDocument | undefined;
  /** Every problem with its path, `conductors[3].from`; practice is asked about once every reference leads somewhere. */
  readonly messages: readonly DocumentMessage[];
}

/** What keeps a draft from being used (errors), and what looks like an oversight. */
export function checkDraft(draft: unknown): CheckedDraft {
  const parsed = parseVehicle(draft);
  if (parsed.ok) return { document: parsed.value, messages: validateVehicle(parsed.value) };
  if (parsed.error.code !== "invalid_document")
    throw new Error(`a draft was refused without messages: ${parsed.error.code}`);
  return { document: undefined, messages: parsed.error.messages };
}
