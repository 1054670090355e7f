import { acceptanceOhms, dischargeOhmsFactor, floodedOpenVolts } from "@probeworthy/circuit";

/** Open-circuit volts at a state of charge from 0 to 1, at 25 °C: straight lines between the curve's points. */
export function batteryOpenVolts(stateOfCharge: number): number {
  const position = Math.min(1, Math.max(0, stateOfCharge)) * 10;
  const step = Math.min(9, Math.floor(position));
  const low = floodedOpenVolts[step]?.[1] ?? 0;
  const high = floodedOpenVolts[step + 1]?.[1] ?? low;
  return low + (high - low) * (position - step);
}

/** The data-sheet resistance of a full battery at a state of charge. */
export const batteryDischargeOhms = (internalOhms: number, stateOfCharge: number): number =>
  internalOhms * dischargeOhmsFactor(stateOfCharge);

/** Extra resistance in the charging direction, Ω. */
export const batteryAcceptanceOhms = (capacityAmpereHours: number, stateOfCharge: number): number =>
  acceptanceOhms(capacityAmpereHours, Math.min(1, stateOfCharge));
