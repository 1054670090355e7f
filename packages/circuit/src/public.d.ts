/**
 * What importers of this package are type-checked against (the "types" entry of package.json). The kernel indexes
 * typed arrays everywhere and is compiled without noUncheckedIndexedAccess; importers keep that rule, so they must
 * not be made to compile the kernel. index.ts checks that its functions have these very types.
 */
import type { Circuit, OperatingPoint, SolveOptions } from "./circuit";
import type { Network } from "./network";
import type { Result } from "./result";

export type { Circuit, OperatingPoint, SolveOptions, StartingPoint } from "./circuit";
export type * from "./network";
export {
  type AlternatorRating,
  alternatorLimitAmps,
  alternatorOhms,
  alternatorVolts,
  regulatedVoltsAt,
} from "./physics/alternator-output";
export {
  acceptanceOhms,
  chargeEfficiency,
  coldCrankingOhms,
  coldOhmsFactor,
  createOpenVoltsCurve,
  dischargeOhmsFactor,
  floodedOpenVolts,
  openVoltsAt,
  openVoltsPerKelvin,
  quarterOpenVolts,
} from "./physics/battery-charge";
export { windingOhmsFactor } from "./physics/copper-winding";
export type { MonotoneCurve } from "./physics/monotone-curve";
export {
  advanceMotorHeat,
  type MotorTemperatures,
  motorHeatSeconds,
  type TwoNodeHeat,
} from "./physics/motor-heat";
export {
  type RectifierState,
  rectifiedMean,
  rectifiedSwing,
  rectifiedVolts,
  ripplePulses,
  rippleVolts,
} from "./physics/rectifier-ripple";
export type { CircuitError, CircuitErrorCode, Result } from "./result";

/**
 * Checks a network and does all work that depends on its topology only.
 *
 * Errors: invalid_element, duplicate_id, missing_ground, missing_control, voltage_loop; each names the element or node.
 */
export declare function prepareCircuit(network: Network): Result<Circuit>;

/**
 * Prepares a network and solves it once. Errors: those of prepareCircuit, and open_current_source, singular,
 * no_convergence.
 */
export declare function operatingPoint(network: Network, options?: SolveOptions): Result<OperatingPoint>;
