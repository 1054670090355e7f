import type { CircuitElement } from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import { ok, type Result } from "../result";
import type { VehicleError, VehicleState } from "../simulation/types";
import { withCircuit } from "./live-circuit";
import { findRest } from "./solve-vehicle";

/**
 * What a source between two nodes of a settled vehicle would have to be to stand for all that is behind them, for a
 * change so small and so quick that no module answers it: supplies, duties, drivers and who talks stay as they are, and
 * lamps, diodes and regulators count with their slope. Open volts and ohms are averages over the states of the bus, as a
 * slow meter sees the change of a voltage by a given current.
 */
export const sourceBetween = (
  compiled: CompiledVehicle,
  state: VehicleState,
  extra: readonly CircuitElement[],
  [a, b]: readonly [string, string],
): Result<{ readonly openVolts: number; readonly ohms: number }, VehicleError> =>
  withCircuit(compiled, extra, (live) => {
    const rest = findRest(compiled, state, live);
    if (!rest.ok) return rest;
    let openVolts = 0;
    let ohms = 0;
    for (const { share, put } of rest.value.states) {
      put?.(true, live);
      const source = live.thevenin(a, b);
      put?.(false, live);
      if (!source.ok) return source;
      openVolts += share * source.value.openVolts;
      ohms += share * source.value.ohms;
    }
    return ok({ openVolts, ohms });
  });
