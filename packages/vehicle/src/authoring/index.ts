export { type CheckedDraft, checkDraft } from "./check-draft";
export { type ExtractError, extractSystem } from "./extract-system";
export { vehicleJsonSchema } from "./json-schema";
