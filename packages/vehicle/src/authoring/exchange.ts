import { parseVehicleDraft, type VehicleDraft } from "../document/parse-vehicle";
import { err, type Result } from "../result";
import type { DocumentMessage } from "../simulation/types";

/** A document or a draft as text for a file: two spaces, a line end at the end. */
export const exportVehicle = (document: object): string => `${JSON.stringify(document, null, 2)}\n`;

/**
 * A draft from a file. Its parts may be half done: `checkDraft` says what is left. Errors: text that is no JSON (path empty), or
 * one message per path that cannot be kept.
 */
export function importVehicle(json: string): Result<VehicleDraft, readonly DocumentMessage[]> {
  let value: unknown;
  try {
    value = JSON.parse(json.replace(/^\uFEFF/, ""));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return err([{ severity: "error", path: "", message: `the file is no JSON: ${error.message}` }]);
  }
  const parsed = parseVehicleDraft(value);
  if (parsed.ok) return parsed;
  if (parsed.error.code !== "invalid_document") throw new Error(`a file was refused: ${parsed.error.code}`);
  return err(parsed.error.messages);
}
