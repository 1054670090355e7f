import {
  type PreparedVehicle,
  type Result,
  type ScanAnswer,
  scan,
  type VehicleError,
  type VehicleState,
} from "@probeworthy/vehicle";

/** What the scan tool shows of one module: its codes, and its live data. One question serves both screens. */
export function readScanTool(
  vehicle: PreparedVehicle,
  state: VehicleState,
  module: string,
): Result<ScanAnswer, VehicleError> {
  return scan(vehicle, state, module);
}
