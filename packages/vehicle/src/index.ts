export { prepareVehicle } from "./compile/compile-vehicle";
export * from "./document/component";
export * from "./document/condition";
export * from "./document/expression";
export * from "./document/fault";
export * from "./document/module";
export * from "./document/names";
export {
  parseVehicle,
  parseVehicleDraft,
  type VehicleDraft,
  vehicleDraftSchema,
} from "./document/parse-vehicle";
export * from "./document/vehicle-document";
export { testPoints } from "./points/test-points";
export * from "./result";
export { advance } from "./simulation/advance";
export { scan } from "./simulation/scan";
export { settle } from "./simulation/settle";
export { changeSeconds, changeState, startState, type VehicleChange } from "./simulation/state";
export * from "./simulation/types";
