/**
 * What importers of this package are type-checked against (the "types" entry of package.json). The kernel indexes
 * typed arrays everywhere and is compiled without noUncheckedIndexedAccess; importers keep that rule, so they must
 * not be made to compile the kernel. index.ts checks that its functions have these very types.
 */
import type { Circuit, OperatingPoint, SolveOptions } from "./circuit";
import type { Network } from "./network";
import type { Periodic, PeriodicOptions } from "./periodic/options";
import type { Result } from "./result";
import type { TransientOptions } from "./transient/options";
import type { Transient, TransientCircuit } from "./transient/transient-circuit";

export type { Circuit, OperatingPoint, Responses, SolveOptions, StartingPoint } from "./circuit";
export type * from "./network";
export type { Periodic, PeriodicOptions } from "./periodic/options";
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
export { copperCoefficient, ohmsAt } from "./physics/copper-temperature";
export { windingOhmsFactor } from "./physics/copper-winding";
export { type FuseType, fuseCoolingSeconds, fuseOpeningSeconds } from "./physics/fuse-curve";
export { fuseContinuousAmps, fuseDerating } from "./physics/fuse-derating";
export { fuseColdOhms, fuseHotRatio } from "./physics/fuse-resistance";
export type { MonotoneCurve } from "./physics/monotone-curve";
export {
  advanceMotorHeat,
  type MotorTemperatures,
  motorHeatSeconds,
  type TwoNodeHeat,
} from "./physics/motor-heat";
export { platinumOhms } from "./physics/platinum";
export {
  type RectifierState,
  rectifiedMean,
  rectifiedSwing,
  rectifiedVolts,
  rippleVolts,
} from "./physics/rectifier-ripple";
export {
  type Fit,
  type FitError,
  fitSteinhartHart,
  type SteinhartHart,
  steinhartHartCelsius,
  steinhartHartOhms,
  type ThermistorPoint,
} from "./physics/steinhart-hart";
export { thermistorOhms } from "./physics/thermistor-table";
export type { CircuitError, CircuitErrorCode, Result } from "./result";
export type {
  Drive,
  Recording,
  StepLimits,
  TransientEvent,
  TransientOptions,
  TransientState,
} from "./transient/options";
export type {
  MeasuredWaveforms,
  Measures,
  Signal,
  Timing,
  Transient,
  TransientCircuit,
  Waveforms,
} from "./transient/transient-circuit";
export type { Wave } from "./transient/wave";

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

/** Makes a network ready to be followed through time. Errors: those of prepareCircuit. */
export declare function prepareTransient(network: Network): Result<TransientCircuit>;

/** Prepares a network and follows it once; errors: those of prepareTransient and of TransientCircuit.run. */
export declare function transient(network: Network, options: TransientOptions): Result<Transient>;

/**
 * One period of the steady state under drives that repeat themselves (PWM). Errors: those of `transient`, and
 * not_periodic, which names the node or element that does not come back.
 */
export declare function periodicSteadyState(network: Network, options: PeriodicOptions): Result<Periodic>;
