import { prepareCircuit as prepare, operatingPoint as solveOnce } from "./prepare-circuit";
import type { operatingPoint as OperatingPointFunction, prepareCircuit as PrepareCircuit } from "./public";

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

// Typed by the declaration that importers see, so that the two cannot drift apart.
export const prepareCircuit: typeof PrepareCircuit = prepare;
export const operatingPoint: typeof OperatingPointFunction = solveOnce;
