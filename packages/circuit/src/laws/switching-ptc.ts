import type { DeviceLaw } from "../devices/law";
import { ptcSiemens, ptcSlope, type SwitchingPtcCurve } from "./switching-ptc-curve";

export interface SwitchingPtcParameters {
  readonly curve: SwitchingPtcCurve;
  /** W/K given up to the ambient. */
  readonly dissipation: number;
  /** J/K held. */
  readonly heatCapacity: number;
  readonly ambientCelsius: number;
  readonly startCelsius: number;
  /** Without time: the temperature is this, whatever the heat. */
  readonly heldCelsius?: number;
}

/** No step of the solver changes the resistance by more than a factor of two … */
const mostLogarithm = 0.7;
/** … nor the temperature by more than this, K. */
const mostKelvin = 60;
/** Gain or loss of heat below this part of what comes and goes counts as balance. */
const balancePart = 1e-4;
/** Heat that moves the temperature by less than this, K, is none: of a part without current only rounding is left. */
const negligibleKelvin = 1e-6;
/** Amps within this part of what the resistance makes of the volts fit them. */
const fittingPart = 1e-4;
/** Volts and amps this near to those that fit are left as the solver has them. */
const closePart = 1e-7;

/**
 * A resistor that heats itself. Internal unknowns: its amps and its temperature T in °C,
 *
 *   amps = v · G(T),   C · dT/dt = v · amps − W · (T − Tambient)
 *
 * A protector in series with its motor has up to three balances: cool, an unstable one, and tripped. A part that warms up
 * stays at the first balance it meets. Newton's method would jump to any of them, so `limit` lets T move only the way the
 * part's own surplus of heat drives it, in steps that change R by no more than a factor of two; near a balance Newton's
 * method is left alone. Whenever T is held back, volts and amps are moved along the line that the network offers (which is
 * why the amps are an unknown of their own: then every iterate lies on that line) to where they fit T, so that the surplus
 * is that of the part in its network. That line is the network's own where the network is linear; for others see
 * elements/switching-ptc, which walks up to the balance before it lets T go. In a transient the step of time rules, and
 * only the length of the solver's steps is limited.
 */
export const switchingPtcLaw: DeviceLaw<SwitchingPtcParameters> = {
  terminals: 2,
  internals: [
    { name: "amps", tolerance: 1e-9 },
    { name: "celsius", tolerance: 1e-6 },
  ],
  evaluate({ curve, dissipation, heatCapacity, ambientCelsius, heldCelsius }, x, out) {
    const v = x[0]!;
    const amps = x[1]!;
    const celsius = x[2]!;
    const siemens = ptcSiemens(curve, celsius);
    out.f[0] = amps;
    out.df[1] = 1;
    out.f[1] = amps - siemens * v;
    out.df[3] = -siemens;
    out.df[4] = 1;
    out.df[5] = -ptcSlope(curve, celsius) * v;
    if (out.isStatic && heldCelsius !== undefined) {
      out.f[2] = celsius - heldCelsius;
      out.df[8] = 1;
      return;
    }
    out.f[2] = dissipation * (celsius - ambientCelsius) - v * amps;
    out.df[6] = -amps;
    out.df[7] = -v;
    out.df[8] = dissipation;
    out.q[2] = heatCapacity * celsius;
    out.dq[8] = heatCapacity;
  },
  initial: (parameters) => [0, parameters.startCelsius],
  limit({ curve, dissipation, ambientCelsius, heldCelsius }, x, last, isStatic) {
    if (isStatic && heldCelsius !== undefined) return false;
    const celsius = last[2]!;
    const wanted = x[2]! - celsius;
    const siemens = ptcSiemens(curve, celsius);
    const negligible = negligibleKelvin * dissipation;
    if (isStatic && isCold(siemens, last, negligible) && isCold(siemens, x, negligible)) return false;
    if (isStatic && !fits(curve, last, fittingPart)) return moveTo(curve, celsius, x, last);
    const gained = last[0]! * last[1]!;
    const lost = dissipation * (celsius - ambientCelsius);
    const isBalanced = Math.abs(gained - lost) <= balancePart * (Math.abs(gained) + Math.abs(lost));
    const direction = isStatic && !isBalanced ? Math.sign(gained - lost) : Math.sign(wanted);
    const most = direction * largestStep(curve, celsius, direction);
    const isShort = wanted * direction >= 0 && Math.abs(wanted) <= Math.abs(most);
    if (isShort && !isStatic) return false;
    return moveTo(curve, celsius + (isShort ? wanted : most), x, last);
  },
};

/** Kelvins, no more than `most`, by which T may go up (1) or down (−1) from `celsius`. */
function largestStep(
  curve: SwitchingPtcCurve,
  celsius: number,
  direction: number,
  most = mostKelvin,
): number {
  const here = ptcSiemens(curve, celsius);
  let step = most;
  while (
    step > 0.01 &&
    Math.abs(Math.log(ptcSiemens(curve, celsius + direction * step) / here)) > mostLogarithm
  ) {
    step /= 2;
  }
  return step;
}

/**
 * Temperature after so many steps up (or down, where `steps` is below 0) from a start: each changes the resistance by no
 * more than a factor of two, and the temperature by no more than 40 K or, far from the start, by half of the way come.
 */
export function steppedCelsius(curve: SwitchingPtcCurve, startCelsius: number, steps: number): number {
  let celsius = startCelsius;
  const direction = Math.sign(steps);
  for (let i = 0; i < Math.abs(steps); i++) {
    const most = Math.max(40, Math.abs(celsius - startCelsius) / 2);
    celsius += direction * largestStep(curve, celsius, direction, most);
  }
  return celsius;
}

/**
 * Takes x to a temperature, and its volts and amps to where the line through those of `last` and x meets the resistance
 * there; leaves them where they fit already, or where that line is not known or does not meet it. True when that changed
 * x.
 */
function moveTo(curve: SwitchingPtcCurve, celsius: number, x: Float64Array, last: Float64Array): boolean {
  const isThere = celsius === x[2]!;
  const siemens = ptcSiemens(curve, celsius);
  x[2] = celsius;
  if (fits(curve, x, closePart)) return !isThere;
  const excess = x[1]! - siemens * x[0]!;
  const back = excess / (excess - (last[1]! - siemens * last[0]!));
  const volts = x[0]! - back * (x[0]! - last[0]!);
  const amps = x[1]! - back * (x[1]! - last[1]!);
  if (!(Number.isFinite(volts) && volts * amps > 0)) return !isThere;
  x[0] = volts;
  x[1] = amps;
  return true;
}

/** Whether neither the volts nor the amps could heat the part. */
const isCold = (siemens: number, x: Float64Array, negligible: number): boolean =>
  siemens * x[0]! * x[0]! <= negligible && x[1]! * x[1]! <= siemens * negligible;

function fits(curve: SwitchingPtcCurve, x: Float64Array, part: number): boolean {
  const amps = ptcSiemens(curve, x[2]!) * x[0]!;
  return Math.abs(x[1]! - amps) <= part * (Math.abs(x[1]!) + Math.abs(amps));
}
