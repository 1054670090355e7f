export { blankVehicle } from "./blank-vehicle";
export { type CheckedDraft, checkDraft } from "./check-draft";
export { exportVehicle, importVehicle } from "./exchange";
export { vehicleJsonSchema } from "./json-schema";
