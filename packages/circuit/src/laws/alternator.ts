import type { DeviceLaw, LawOutput } from "../devices/law";
import { type RectifierState, rectifiedMean, rectifiedVolts } from "../physics/rectifier-ripple";
import {
  logistic,
  positivePart,
  positivePartSlope,
  saturate,
  saturateSlope,
  smoothMax,
  smoothMaxShare,
} from "./bends";

export interface AlternatorParameters {
  /** EMF at full field and this speed, V. */
  readonly emfVolts: number;
  /** Behind that EMF, Ω. */
  readonly sourceOhms: number;
  /** Set-point at the regulator's temperature, V, at half field. */
  readonly setVolts: number;
  /** Rise of the sensed volts that takes the field from full to none. */
  readonly bandVolts: number;
  readonly senseOhms: number;
  /** How far the sensed volts may lie below B+ before the regulator goes by B+ less this. */
  readonly senseFallbackVolts: number;
  /** Part of the full field that the field circuit can still drive: 1 sound, 0 open. */
  readonly fieldScale: number;
  readonly fieldSeconds: number;
  /** From D+ to 31 through the field winding, Ω. */
  readonly fieldOhms: number;
  readonly leakOhms: number;
  readonly rectifier: RectifierState;
  /** Radians of the phasor per second; with `pulses` a transient sees the rectified pulses, else their mean. */
  readonly phasorRadiansPerSecond: number;
  readonly pulses: boolean;
}

/** Volts over which a rectifier branch comes to conduct in full. */
const rectifierBend = 0.05;
/** Width of the bends at no field and full field, of the way between them. */
const fieldBend = 0.02;
/** Volts over which the regulator changes from the sense terminal to B+. */
const fallbackBend = 0.05;
/** So near to a corner a demand counts as having stopped there; it is volts that are kept, and they round. */
const atCorner = 1e-6;
/** Exciter diodes and their leads, Ω. */
const exciterOhms = 0.2;
/** Part of a pulse (a sixth of a turn) with which the output current follows the rectified EMF. */
const commutation = 0.02;

/** Slower than this it gives nothing, and a pulse would last for seconds. */
const leastRadiansPerSecond = 1;

const hasPulses = (p: AlternatorParameters): boolean =>
  p.pulses && p.phasorRadiansPerSecond > leastRadiansPerSecond;

/** Which terminals there are, and where their unknowns stand; B+ is always 0. */
interface Layout {
  readonly sense: number;
  readonly lamp: number;
  readonly amps: number;
  readonly field: number;
}

const layoutOf = (hasSense: boolean, hasLamp: boolean): Layout => {
  const sense = hasSense ? 1 : 0;
  const lamp = hasLamp ? sense + 1 : 0;
  const amps = 1 + Number(hasSense) + Number(hasLamp);
  return { sense, lamp, amps, field: amps + 1 };
};

/** Volts the regulator goes by. */
const regulatedOn = (p: AlternatorParameters, at: Layout, x: Float64Array): number =>
  at.sense === 0 ? x[0] : smoothMax(x[at.sense], x[0] - p.senseFallbackVolts, fallbackBend);

const demandOf = (p: AlternatorParameters, at: Layout, x: Float64Array): number =>
  0.5 + (p.setVolts - regulatedOn(p, at, x)) / p.bandVolts;

function evaluateOutput(p: AlternatorParameters, at: Layout, x: Float64Array, out: LawOutput): number {
  const n = out.size;
  const shape =
    out.isStatic || !hasPulses(p)
      ? rectifiedMean[p.rectifier]
      : rectifiedVolts(p.rectifier, p.phasorRadiansPerSecond * out.seconds);
  const full = shape * p.emfVolts;
  out.f[0] = x[0] / p.leakOhms - x[at.amps];
  out.df[0] = 1 / p.leakOhms;
  out.df[at.amps] = -1;

  const spare = full * x[at.field] - x[0];
  const siemens = positivePartSlope(spare, rectifierBend) / p.sourceOhms;
  const row = at.amps * n;
  out.f[at.amps] = x[at.amps] - positivePart(spare, rectifierBend) / p.sourceOhms;
  out.df[row + at.amps] = 1;
  out.df[row] = siemens;
  out.df[row + at.field] = -siemens * full;
  if (hasPulses(p)) {
    const seconds = (commutation * Math.PI) / (3 * p.phasorRadiansPerSecond);
    out.q[at.amps] = seconds * x[at.amps];
    out.dq[row + at.amps] = seconds;
  }
  return full;
}

function evaluateField(p: AlternatorParameters, at: Layout, x: Float64Array, out: LawOutput): void {
  const row = at.field * out.size;
  const demand = demandOf(p, at, x);
  out.f[at.field] = x[at.field] - p.fieldScale * saturate(demand, fieldBend);
  out.df[row + at.field] = 1;
  const slope = (p.fieldScale * saturateSlope(demand, fieldBend)) / p.bandVolts;
  if (at.sense === 0) out.df[row] = slope;
  else {
    const share = smoothMaxShare(x[at.sense], x[0] - p.senseFallbackVolts, fallbackBend);
    out.df[row + at.sense] = slope * (1 - share);
    out.df[row] = slope * share;
  }
  out.q[at.field] = p.fieldSeconds * x[at.field];
  out.dq[row + at.field] = p.fieldSeconds;
}

/** The exciter diodes hold D+ at the volts of the phases: those of B+ while it takes current, the EMF while it does not. */
function evaluateLamp(
  p: AlternatorParameters,
  at: Layout,
  full: number,
  x: Float64Array,
  out: LawOutput,
): void {
  const emf = full * x[at.field];
  const volts = -smoothMax(-emf, -x[0], rectifierBend);
  const ofPlus = logistic((emf - x[0]) / rectifierBend);
  const spare = volts - x[at.lamp];
  const siemens = positivePartSlope(spare, rectifierBend) / exciterOhms;
  const row = at.lamp * out.size;
  out.f[at.lamp] = x[at.lamp] / p.fieldOhms - positivePart(spare, rectifierBend) / exciterOhms;
  out.df[row + at.lamp] = 1 / p.fieldOhms + siemens;
  out.df[row] = -siemens * ofPlus;
  out.df[row + at.field] = -siemens * (1 - ofPlus) * full;
}

/**
 * Newton would jump for ever between "no field" and "full field", which are flat and say nothing of each other: no step
 * passes a corner of the regulator without a stop at it (as in devices/regulator.ts).
 */
function limitDemand(p: AlternatorParameters, at: Layout, x: Float64Array, last: Float64Array): boolean {
  const field = Math.min(1, Math.max(0, x[at.field]));
  const isFieldLimited = Math.abs(field - x[at.field]) > 1e-9;
  if (isFieldLimited) x[at.field] = field;
  const from = demandOf(p, at, last);
  const wanted = demandOf(p, at, x);
  const wasNone = from <= atCorner;
  const wasFull = from >= 1 - atCorner;
  let to = wanted;
  if ((wasFull && wanted < 0) || (wasNone && wanted > 1)) to = 0.5;
  else if (!wasNone && wanted < 0) to = 0;
  else if (!wasFull && wanted > 1) to = 1;
  if (to === wanted) return isFieldLimited;
  // Both together: what the regulator looks at hangs on B+, by whatever cable.
  const shift = p.bandVolts * (wanted - to);
  x[0] += shift;
  if (at.sense !== 0) x[at.sense] += shift;
  return true;
}

function createAlternatorLaw(hasSense: boolean, hasLamp: boolean): DeviceLaw<AlternatorParameters> {
  const at = layoutOf(hasSense, hasLamp);
  return {
    terminals: at.amps + 1,
    internals: [
      { name: "ampsOutput", tolerance: 1e-9 },
      { name: "fieldShare", tolerance: 1e-10 },
    ],
    evaluate(p, x, out) {
      const full = evaluateOutput(p, at, x, out);
      evaluateField(p, at, x, out);
      if (hasSense) {
        out.f[at.sense] = x[at.sense] / p.senseOhms;
        out.df[at.sense * out.size + at.sense] = 1 / p.senseOhms;
      }
      if (hasLamp) evaluateLamp(p, at, full, x, out);
    },
    initial: (p) => [0, p.fieldScale / 2],
    limit: (p, x, last) => limitDemand(p, at, x, last),
  };
}

/**
 * Claw-pole alternator with rectifier and regulator; terminals B+, then the sense terminal and D+ where there are any,
 * last 31. With E the EMF at this speed and full field, φ the share of the field, u the rectified shape:
 *
 *   amps out of B+ = (u·φ·E − v)⁺ / sourceOhms                  blocked while the EMF is lower
 *   fieldSeconds·dφ/dt = fieldScale·sat(½ + (set − sensed)/band) − φ
 *
 * u is the mean of the rectified pulses, or in a transient the pulses themselves. At standstill E = 0 and the device is
 * passive: it blocks B+ and conducts only when the battery is connected the wrong way round.
 */
export const alternatorLaws = {
  plain: createAlternatorLaw(false, false),
  sense: createAlternatorLaw(true, false),
  lamp: createAlternatorLaw(false, true),
  senseAndLamp: createAlternatorLaw(true, true),
} as const;
