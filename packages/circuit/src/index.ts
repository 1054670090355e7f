import { findPeriodicSteadyState } from "./periodic/periodic-steady-state";
import { prepareCircuit as prepare, operatingPoint as solveOnce } from "./prepare-circuit";
import type {
  operatingPoint as OperatingPointFunction,
  periodicSteadyState as PeriodicSteadyState,
  prepareCircuit as PrepareCircuit,
  prepareTransient as PrepareTransient,
  transient as TransientFunction,
} from "./public";
import { transient as follow, prepareTransient as prepareInTime } from "./transient/prepare-transient";

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

// Typed by the declaration that importers see, so that the two cannot drift apart.
export const prepareCircuit: typeof PrepareCircuit = prepare;
export const operatingPoint: typeof OperatingPointFunction = solveOnce;
export const prepareTransient: typeof PrepareTransient = prepareInTime;
export const transient: typeof TransientFunction = follow;
export const periodicSteadyState: typeof PeriodicSteadyState = findPeriodicSteadyState;
