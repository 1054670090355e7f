import { createMonotoneCurve, curveSlope, curveValue, type MonotoneCurve } from "../physics/monotone-curve";

/** Siemens of a switching PTC by its own temperature. */
export type SwitchingPtcCurve =
  | {
      readonly form: "smooth";
      readonly coldSiemens: number;
      /** Ohms cold over ohms far above the switching temperature. */
      readonly hotShare: number;
      readonly switchCelsius: number;
      readonly coefficient: number;
    }
  | { readonly form: "table"; readonly logOhms: MonotoneCurve };

/** ln R over °C through a table of [°C, Ω], °C rising; level at both ends and beyond them. */
export const tableCurve = (table: readonly (readonly [number, number])[]): SwitchingPtcCurve => ({
  form: "table",
  logOhms: createMonotoneCurve(
    table.map(([celsius, ohms]) => [celsius, Math.log(ohms)]),
    [0, 0],
  ),
});

/**
 * Siemens at `celsius`. The smooth form is
 *
 *   G(T) = Gcold · [h + (1 − h) / (1 + e^(α·(T − Tswitch)))]
 *
 * so R doubles at Tswitch (the reference temperature of IEC 60738, from memory), rises by α per kelvin above it, and
 * levels off at Rcold/h.
 */
export function ptcSiemens(curve: SwitchingPtcCurve, celsius: number): number {
  if (curve.form === "table") return Math.exp(-curveValue(curve.logOhms, celsius));
  const cold = 1 / (1 + Math.exp(curve.coefficient * (celsius - curve.switchCelsius)));
  return curve.coldSiemens * (curve.hotShare + (1 - curve.hotShare) * cold);
}

/** Derivative of `ptcSiemens` by the temperature. */
export function ptcSlope(curve: SwitchingPtcCurve, celsius: number): number {
  if (curve.form === "table") {
    return -curveSlope(curve.logOhms, celsius) * Math.exp(-curveValue(curve.logOhms, celsius));
  }
  const { coldSiemens, hotShare, coefficient, switchCelsius } = curve;
  const cold = 1 / (1 + Math.exp(coefficient * (celsius - switchCelsius)));
  return -coldSiemens * (1 - hotShare) * coefficient * cold * (1 - cold);
}
