import { ok, type Result, type VehicleError } from "@probeworthy/vehicle";
import { autorange } from "./display";
import { meter, voltRanges } from "./meter";
import type { MeterCircuit } from "./meter-circuit";
import type { Reading } from "./reading";

/** Volts DC: the 10 MΩ input loads the circuit, then the display rounds. */
export function readVolts(circuit: MeterCircuit): Result<Reading, VehicleError> {
  const volts = circuit({ ohms: meter.voltsInputOhms, amps: 0 });
  return volts.ok ? ok(autorange("volts", volts.value, voltRanges)) : volts;
}
