import type { DeviceLaw, LawOutput } from "../devices/law";
import { copperCoefficient } from "../physics/copper-temperature";
import { windingOhmsFactor, windingOhmsFactorSlope } from "../physics/copper-winding";

/** Numbers of a motor, SI throughout. See elements/motor for what each one means. */
export interface MotorParameters {
  readonly ohms: number;
  readonly henries: number;
  readonly motorConstant: number;
  readonly inertia: number;
  readonly viscousFriction: number;
  /** Friction and load that oppose the motion whatever the speed, N·m. */
  readonly dryTorque: number;
  /** The part of dryTorque that is the motor's own and heats its housing. */
  readonly coulombFriction: number;
  readonly loadPerSpeed: number;
  readonly loadPerSpeedSquared: number;
  readonly shaftTorque: number;
  readonly locked: boolean;
  readonly brushVolts: number;
  readonly celsius: number;
  readonly startAmps: number;
  readonly startRadiansPerSecond: number;
}

/** Two-node heat on top: winding → housing → ambient. K/W, J/K, °C. */
export interface HeatedMotorParameters extends MotorParameters {
  readonly windingToHousing: number;
  readonly housingToAmbient: number;
  readonly windingCapacity: number;
  readonly housingCapacity: number;
  readonly housingCelsius: number;
  readonly ambientCelsius: number;
  /** For an operating point alone: true for thermal balance, false to hold both temperatures where they are. */
  readonly heatInBalance: boolean;
}

/** Speed at which dry friction has reached 76 % of its full value, rad/s: below, a held rotor creeps. */
const stillRadiansPerSecond = 0.1;
/** Current at which the brushes drop 76 % of their full voltage, A. */
const brushAmps = 0.1;

const AMPS = 1;
const SPEED = 2;
const WINDING = 3;
const HOUSING = 4;

const ampsArmature = { name: "ampsArmature", tolerance: 1e-9 };
const radiansPerSecond = { name: "radiansPerSecond", tolerance: 1e-9 };

/** x = volts, armature amps i, speed w; the winding is at `celsius`. */
function evaluateMachine(p: MotorParameters, x: Float64Array, celsius: number, out: LawOutput): void {
  const n = out.size;
  const i = x[AMPS];
  const w = x[SPEED];
  const ohms = p.ohms * windingOhmsFactor(celsius);
  out.f[0] = i;
  out.df[AMPS] = 1;

  const brush = Math.tanh(i / brushAmps);
  out.f[AMPS] = ohms * i + p.motorConstant * w + p.brushVolts * brush - x[0];
  out.df[AMPS * n] = -1;
  out.df[AMPS * n + AMPS] = ohms + (p.brushVolts / brushAmps) * (1 - brush * brush);
  out.df[AMPS * n + SPEED] = p.motorConstant;
  out.q[AMPS] = p.henries * i;
  out.dq[AMPS * n + AMPS] = p.henries;

  if (p.locked) {
    out.f[SPEED] = w;
    out.df[SPEED * n + SPEED] = 1;
    return;
  }
  const dry = Math.tanh(w / stillRadiansPerSecond);
  const fan = p.loadPerSpeedSquared * Math.abs(w);
  const viscous = p.viscousFriction + p.loadPerSpeed;
  out.f[SPEED] = (viscous + fan) * w + p.dryTorque * dry - p.motorConstant * i - p.shaftTorque;
  out.df[SPEED * n + AMPS] = -p.motorConstant;
  out.df[SPEED * n + SPEED] = viscous + 2 * fan + (p.dryTorque / stillRadiansPerSecond) * (1 - dry * dry);
  out.q[SPEED] = p.inertia * w;
  out.dq[SPEED * n + SPEED] = p.inertia;
}

/**
 * Dry friction turns over at standstill, where Newton would leap from one direction of rotation into the other and
 * back: every change of direction makes a stop at zero. The same for the brushes and the direction of the current.
 */
function stopAtZero(p: MotorParameters, x: Float64Array, last: Float64Array): boolean {
  let changed = false;
  if (p.dryTorque > 0 && x[SPEED] * last[SPEED] < 0) {
    x[SPEED] = 0;
    changed = true;
  }
  if (p.brushVolts > 0 && x[AMPS] * last[AMPS] < 0) {
    x[AMPS] = 0;
    changed = true;
  }
  return changed;
}

/**
 * In balance a winding is warmer than its surroundings by Rth·R(T)·i², which has an answer only while
 * g = Rth·R₂₀·α·i² is below 1; on its way through the inrush Newton would pass beyond, where the answer has the wrong
 * sign. So g comes no more than half of the way nearer to 1 in one step, and no winding gets colder than its surroundings.
 */
function stayBelowRunaway(p: HeatedMotorParameters, x: Float64Array, last: Float64Array): boolean {
  let changed = false;
  const perSquare = (p.windingToHousing + p.housingToAmbient) * p.ohms * copperCoefficient;
  const before = Math.min(perSquare * last[AMPS] ** 2, 1);
  const most = Math.max(0.5, (1 + before) / 2);
  if (perSquare * x[AMPS] ** 2 > most) {
    x[AMPS] = Math.sign(x[AMPS]) * Math.sqrt(most / perSquare);
    changed = true;
  }
  const coldest = p.ambientCelsius - 1;
  for (const heat of [WINDING, HOUSING]) {
    if (x[heat] >= coldest) continue;
    x[heat] = coldest;
    changed = true;
  }
  return changed;
}

/**
 * Brushed direct-current motor with a constant field, terminals plus and minus, winding at a given temperature:
 *
 *   v = R(t)·i + L·di/dt + K·w + brushVolts·tanh(i / 0.1 A)
 *   J·dw/dt = K·i + shaftTorque − (viscous + loadPerSpeed)·w − loadPerSpeedSquared·|w|·w − dryTorque·tanh(w / 0.1 rad/s)
 *
 * K is both the torque constant (N·m/A) and the back-EMF constant (V·s/rad): the same number in SI, as v·i = K·w·i of
 * electrical power has to come out as shaft power. A locked rotor has w = 0 in place of the second equation.
 */
export const motorLaw: DeviceLaw<MotorParameters> = {
  terminals: 2,
  internals: [ampsArmature, radiansPerSecond],
  evaluate: (p, x, out) => evaluateMachine(p, x, p.celsius, out),
  initial: (p) => [p.startAmps, p.locked ? 0 : p.startRadiansPerSecond],
  limit: stopAtZero,
};

/**
 * The same with the heat of winding (w) and housing (h) as unknowns:
 *
 *   Cw·dw/dt = R(w)·i² − (w − h)/Rwh
 *   Ch·dh/dt = brush and friction losses + (w − h)/Rwh − (h − ambient)/Rha
 *
 * (two-node heat: firgelliauto.com motor thermal calculator; friction into the housing: common practice, no source).
 */
export const heatedMotorLaw: DeviceLaw<HeatedMotorParameters> = {
  terminals: 2,
  internals: [
    ampsArmature,
    radiansPerSecond,
    { name: "celsiusWinding", tolerance: 1e-7 },
    { name: "celsiusHousing", tolerance: 1e-7 },
  ],
  evaluate(p, x, out) {
    const n = out.size;
    const i = x[AMPS];
    const winding = x[WINDING];
    const housing = x[HOUSING];
    evaluateMachine(p, x, winding, out);
    const ohmsSlope = p.ohms * windingOhmsFactorSlope(winding);
    out.df[AMPS * n + WINDING] = ohmsSlope * i;
    out.q[WINDING] = p.windingCapacity * winding;
    out.dq[WINDING * n + WINDING] = p.windingCapacity;
    out.q[HOUSING] = p.housingCapacity * housing;
    out.dq[HOUSING * n + HOUSING] = p.housingCapacity;
    if (out.isStatic && !p.heatInBalance) {
      out.f[WINDING] = winding - p.celsius;
      out.df[WINDING * n + WINDING] = 1;
      out.f[HOUSING] = housing - p.housingCelsius;
      out.df[HOUSING * n + HOUSING] = 1;
      return;
    }
    const ohms = p.ohms * windingOhmsFactor(winding);
    const flow = (winding - housing) / p.windingToHousing;
    out.f[WINDING] = flow - ohms * i * i;
    out.df[WINDING * n + AMPS] = -2 * ohms * i;
    out.df[WINDING * n + WINDING] = 1 / p.windingToHousing - ohmsSlope * i * i;
    out.df[WINDING * n + HOUSING] = -1 / p.windingToHousing;

    const brush = Math.tanh(i / brushAmps);
    out.f[HOUSING] = (housing - p.ambientCelsius) / p.housingToAmbient - flow - p.brushVolts * brush * i;
    out.df[HOUSING * n + AMPS] = -p.brushVolts * (brush + (i / brushAmps) * (1 - brush * brush));
    out.df[HOUSING * n + WINDING] = -1 / p.windingToHousing;
    out.df[HOUSING * n + HOUSING] = 1 / p.housingToAmbient + 1 / p.windingToHousing;
    if (p.locked) return;
    const w = x[SPEED];
    const dry = Math.tanh(w / stillRadiansPerSecond);
    out.f[HOUSING] -= p.viscousFriction * w * w + p.coulombFriction * dry * w;
    out.df[HOUSING * n + SPEED] =
      -2 * p.viscousFriction * w - p.coulombFriction * (dry + (w / stillRadiansPerSecond) * (1 - dry * dry));
  },
  initial: (p) => [p.startAmps, p.locked ? 0 : p.startRadiansPerSecond, p.celsius, p.housingCelsius],
  limit(p, x, last) {
    const stopped = stopAtZero(p, x, last);
    return (p.heatInBalance && stayBelowRunaway(p, x, last)) || stopped;
  },
};
