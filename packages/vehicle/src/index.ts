export { advanceMotorHeat, fuseOpeningSeconds, thermistorOhms } from "@probeworthy/circuit";
export { type ChartUnit, chartColumns, chartUnits } from "./charts/chart-columns";
export { type CheckedChartRow, checkChart } from "./charts/check-chart";
export { type ChartProblem, type ParsedChart, type ParsedChartRow, parseChart } from "./charts/parse-chart";
export { type ChartRow, type ChartValue, terminalChart } from "./charts/terminal-chart";
export { prepareVehicle } from "./compile/compile-vehicle";
export { faultCodeFromBytes } from "./diagnosis/fault-code";
export { clearedStatus, statusBit, statusText } from "./diagnosis/status-byte";
export * from "./document/component";
export * from "./document/condition";
export * from "./document/expression";
export * from "./document/fault";
export { faultAt, middleOf } from "./document/fault-at";
export {
  type FaultFamily,
  type FaultRow,
  faultFamilies,
  faultTable,
  type SeverityScale,
} from "./document/fault-table";
export { type FaultPlace, listFaultPlaces } from "./document/list-fault-places";
export * from "./document/module";
export * from "./document/names";
export {
  parseVehicle,
  parseVehicleDraft,
  type VehicleDraft,
  vehicleDraftSchema,
} from "./document/parse-vehicle";
export * from "./document/vehicle-document";
export { relayTerminals, terminalsOf } from "./document/vehicle-index";
export { type Zone, zones } from "./document/zone";
export { batteryOpenVolts } from "./physics/battery";
export { cableOhmsPerMetre, conductorAmpacity, conductorOhms, copperOhmsAt } from "./physics/copper";
export { testPoints } from "./points/test-points";
export * from "./result";
export { advance } from "./simulation/advance";
export { scan } from "./simulation/scan";
export { settle } from "./simulation/settle";
export { changeSeconds, changeState, startState, type VehicleChange } from "./simulation/state";
export { type Thevenin, thevenin } from "./simulation/thevenin";
export * from "./simulation/types";
export { validateVehicle } from "./validate/validate-vehicle";
