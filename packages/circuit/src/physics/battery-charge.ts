import type { OpenVoltsTable } from "../kinds/battery";
import { createMonotoneCurve, curveSlope, curveValue, type MonotoneCurve } from "./monotone-curve";

/**
 * Rested 12 V flooded battery at 25 °C in tenths of its charge. Source: Ver-Mac manual p. 42,
 * manualshive.com/en/manual/ver-mac/pcms-series/1003075?page=50 (10 % to 100 %); the empty end goes on with the slope from
 * 20 % to 10 % (no source).
 */
export const floodedOpenVolts: OpenVoltsTable = [
  [0, 11.56],
  [0.1, 11.72],
  [0.2, 11.88],
  [0.3, 12.02],
  [0.4, 12.12],
  [0.5, 12.2],
  [0.6, 12.28],
  [0.7, 12.36],
  [0.8, 12.46],
  [0.9, 12.58],
  [1, 12.7],
];

/**
 * The coarser table that battery makers print, at 80 °F (26.7 °C). Source: discoverbattery.com, state-of-charge article;
 * studylib.net/doc/18054160 (cites BCI). It lies above the finer one by 0.11 V at a quarter and 0.33 V when flat: the two
 * do not mean the same by "flat".
 */
export const quarterOpenVolts: OpenVoltsTable = [
  [0, 11.89],
  [0.25, 12.06],
  [0.5, 12.24],
  [0.75, 12.45],
  [1, 12.65],
];

/**
 * Temperature correction of a 12 V battery, V/K: ±0.024 V per 10 °F (5.6 °C). Source: discoverbattery.com and
 * studylib.net/doc/18054160.
 */
export const openVoltsPerKelvin = 0.024 / 5.6;

/** V by which the curve bends down beyond empty, times the square of the overdrawn charge (common practice, no source). */
const collapse = 20;

/** Smooth rising curve through a table, for the two functions below. The table runs from 0 to 1 in rising order. */
export const createOpenVoltsCurve = (table: OpenVoltsTable): MonotoneCurve => createMonotoneCurve(table);

/**
 * Open-circuit volts of a rested 12 V battery at a state of charge, at the temperature of the curve's table. Goes on
 * straight above full; collapses below empty.
 */
export const openVoltsAt = (curve: MonotoneCurve, charge: number): number =>
  curveValue(curve, charge) - collapse * Math.min(0, charge) ** 2;

/** Slope of openVoltsAt, V per whole charge. */
export const openVoltsSlope = (curve: MonotoneCurve, charge: number): number =>
  curveSlope(curve, charge) - 2 * collapse * Math.min(0, charge);

/**
 * Resistance by state of charge, as a multiple of the full battery's: it grows as the acid thins, to 1.5 times at half
 * charge and 3 times when flat: 1 + 2·(1 − charge)². Common practice, no source.
 */
export const dischargeOhmsFactor = (charge: number): number => 1 + 2 * Math.max(0, 1 - charge) ** 2;

export const dischargeOhmsFactorSlope = (charge: number): number => -4 * Math.max(0, 1 - charge);

/**
 * Resistance by temperature, as a multiple of that at 25 °C: doubled at −18 °C, 2^((25 − t)/43). Common practice, no
 * source; checked against the load-test minima in tests/reference/circuit/battery.test.ts.
 */
export const coldOhmsFactor = (celsius: number): number => 2 ** ((25 - celsius) / 43);

/**
 * Extra resistance in the charging direction (the plates' charge acceptance), Ω: about 0.35 Ω for a full 60 Ah battery,
 * so that 14.4 V drives some 5 A into it, falling to 0.05 Ω at half charge (some 40 A). Scales with 60 Ah / capacity.
 * Common practice, no source.
 */
export const acceptanceOhms = (capacityAmpereHours: number, charge: number): number =>
  (0.03 + 0.32 * Math.max(0, charge) ** 4) * (60 / capacityAmpereHours);

export const acceptanceOhmsSlope = (capacityAmpereHours: number, charge: number): number =>
  1.28 * Math.max(0, charge) ** 3 * (60 / capacityAmpereHours);

/** From which charge on a battery begins to gas instead of taking charge up. */
const gassingFrom = 0.95;

/**
 * Part of the charging current that is stored: all of it up to 95 %, from there falling smoothly to nothing in a full
 * battery, which gasses instead. Common practice, no source.
 */
export function chargeEfficiency(charge: number): number {
  const u = Math.min(1, Math.max(0, (charge - gassingFrom) / (1 - gassingFrom)));
  return 1 - u * u * (3 - 2 * u);
}

export function chargeEfficiencySlope(charge: number): number {
  const u = Math.min(1, Math.max(0, (charge - gassingFrom) / (1 - gassingFrom)));
  return (-6 * u * (1 - u)) / (1 - gassingFrom);
}

/**
 * Internal resistance at −18 °C, polarisation included, that a cold cranking rating implies: a full battery holds 7.2 V
 * for 30 s at that current (SAE J537, from memory). Divide by coldOhmsFactor(−18) for the resistance at 25 °C.
 */
export function coldCrankingOhms(coldCrankingAmps: number, fullVolts = 12.7): number {
  return (fullVolts - openVoltsPerKelvin * (25 + 18) - 7.2) / coldCrankingAmps;
}
