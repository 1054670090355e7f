export { type CheckedDraft, checkDraft } from "./check-draft";
export { vehicleJsonSchema } from "./json-schema";
