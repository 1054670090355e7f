/**
 * State of charge and open-circuit volts of a rested 12 V flooded battery at 25 °C.
 * Source: Ver-Mac manual p. 42, manualshive.com/en/manual/ver-mac/pcms-series/1003075?page=50 (10 % to 100 %);
 * the empty end goes on with the slope from 20 % to 10 % (no source).
 */
export const batteryCurve: readonly (readonly [number, number])[] = [
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

/** Open-circuit volts at a state of charge from 0 to 1: straight lines between the curve's points. */
export function batteryOpenVolts(stateOfCharge: number): number {
  const position = Math.min(1, Math.max(0, stateOfCharge)) * 10;
  const step = Math.min(9, Math.floor(position));
  const low = batteryCurve[step]?.[1] ?? 0;
  const high = batteryCurve[step + 1]?.[1] ?? low;
  return low + (high - low) * (position - step);
}

/**
 * Discharge resistance: the data-sheet figure at full charge, growing as the acid thins, to 1.5 times at half charge and
 * 3 times when flat: factor 1 + 2·(1 − charge)². Common practice, no source.
 */
export const batteryDischargeOhms = (internalOhms: number, stateOfCharge: number): number =>
  internalOhms * (1 + 2 * Math.max(0, 1 - stateOfCharge) ** 2);

/**
 * Extra resistance in the charging direction (the plates' charge acceptance), Ω: about 0.35 Ω for a full 60 Ah battery,
 * so that 14.4 V drives some 5 A into it, falling to 0.05 Ω at half charge (some 40 A). Scales with 60 Ah / capacity.
 * Common practice, no source.
 */
export const batteryAcceptanceOhms = (capacityAmpereHours: number, stateOfCharge: number): number =>
  (0.03 + 0.32 * Math.min(1, Math.max(0, stateOfCharge)) ** 4) * (60 / capacityAmpereHours);
