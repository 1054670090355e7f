import "server-only";
import {
  type DocumentMessage,
  parseVehicle,
  type VehicleDocument,
  validateVehicle,
} from "@probeworthy/vehicle";

export interface CheckedVehicle {
  /** Present when the draft is executable as it stands. */
  readonly document: VehicleDocument | undefined;
  readonly messages: readonly DocumentMessage[];
}

/** What keeps a draft from being published, and what looks like an oversight. */
export function checkVehicle(draft: unknown): CheckedVehicle {
  const parsed = parseVehicle(draft);
  if (parsed.ok) return { document: parsed.value, messages: validateVehicle(parsed.value) };
  if (parsed.error.code !== "invalid_document")
    throw new Error(`a draft was refused without messages: ${parsed.error.code}`);
  return { document: undefined, messages: parsed.error.messages };
}
