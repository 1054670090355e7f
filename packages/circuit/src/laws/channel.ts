import type { DeviceLaw, LawOutput } from "../devices/law";

/** One electronic switch of an output stage, its body diode left out. */
export interface ChannelParameters {
  readonly isOn: boolean;
  readonly ohms: number;
  /** Infinity for a switch that does not limit its current. */
  readonly limitAmps: number;
  /** What it passes when it is off, from a few volts on. */
  readonly leakAmps: number;
}

/** The same with an overload counter: full, at 1, after `tripSeconds` at the limit. */
export interface TrippingChannelParameters extends ChannelParameters {
  readonly tripSeconds: number;
  /** Time in which the counter of a tripped switch empties; undefined when it stays full. */
  readonly retrySeconds: number | undefined;
  readonly isTripped: boolean;
}

/** Voltage at which a switch that is off passes 76 % of its leak. */
const leakVolts = 1;
/** Lies across a switch that is off, siemens, as across every junction: far out, where the leak is level, too. */
const offLeak = 1e-12;
/** An emptying counter has come down to this when the switch tries again. */
export const emptied = Math.exp(-5);

const power8 = (x: number): number => x * x * (x * x) * (x * x * (x * x));
const root8 = (x: number): number => Math.sqrt(Math.sqrt(Math.sqrt(x)));

/** Writes the current from the first terminal to the second and its slope. */
function evaluateChannel(p: ChannelParameters, volts: number, out: LawOutput): void {
  if (!p.isOn) {
    const part = Math.tanh(volts / leakVolts);
    out.f[0] = p.leakAmps * part + offLeak * volts;
    out.df[0] = (p.leakAmps / leakVolts) * (1 - part * part) + offLeak;
    return;
  }
  const u = volts / (p.ohms * p.limitAmps);
  if (!(u > 0) || p.limitAmps === Number.POSITIVE_INFINITY) {
    out.f[0] = volts / p.ohms;
    out.df[0] = 1 / p.ohms;
    return;
  }
  // In u or 1/u, whichever is small, so that none overflows.
  const small = u <= 1 ? u : 1 / u;
  const sum = 1 + power8(small);
  const root = root8(sum);
  out.f[0] = (p.limitAmps * Math.min(u, 1)) / root;
  out.df[0] = (u <= 1 ? 1 : power8(small) * small) / (root * sum * p.ohms);
}

/** Far out both ways the current hardly changes, and Newton would leap to and fro over the steep middle. */
function stopAtZero(p: ChannelParameters, x: Float64Array, last: Float64Array): boolean {
  const isFlat = !p.isOn || p.limitAmps < Number.POSITIVE_INFINITY;
  if (!isFlat || !(x[0] * last[0] < 0)) return false;
  x[0] = 0;
  return true;
}

/**
 * Switch of an output stage between two terminals. With u = v / (ohms · limitAmps):
 *
 *   on    amps = limitAmps · u · (1 + u⁸)^(−1/8) for v > 0, v / ohms backwards
 *   off   amps = leakAmps · tanh(v / 1 V) + v · 1e-12 S
 *
 * At 30 % of the limit the resistance is still exact to 1e-5. Rises with v and never delivers power.
 */
export const channelLaw: DeviceLaw<ChannelParameters> = {
  terminals: 2,
  internals: [],
  evaluate: (p, x, out) => evaluateChannel(p, x[0], out),
  initial: () => [],
  limit: stopAtZero,
};

/** Share of an overload: 0 below the limit, 1 above, a half where u is 1. */
function overloadOf(u: number): number {
  if (u <= 0) return 0;
  return u <= 1 ? u ** 16 / (1 + u ** 16) : 1 / (1 + u ** -16);
}

function overloadSlope(u: number): number {
  if (u <= 0) return 0;
  return u <= 1 ? (16 * u ** 15) / (1 + u ** 16) ** 2 : (16 * u ** -17) / (1 + u ** -16) ** 2;
}

/**
 * The same with a counter h of the time at the limit, which stands for the heat of the switch:
 *
 *   dh/dt = (s − (1 − s)·h) / tripSeconds     on, with s = u¹⁶ / (1 + u¹⁶) the share of an overload
 *   dh/dt = −h / tripSeconds                  off
 *   dh/dt = −5·h / retrySeconds               tripped, or 0 without a retry
 *
 * so a lasting overload takes h from 0 to 1 in `tripSeconds` and h has fallen to exp(−5) after `retrySeconds`.
 */
export const trippingChannelLaw: DeviceLaw<TrippingChannelParameters> = {
  terminals: 2,
  internals: [{ name: "overload", tolerance: 1e-9 }],
  evaluate(p, x, out) {
    evaluateChannel(p, x[0], out);
    const h = x[1];
    if (out.isStatic) {
      out.f[1] = h;
      out.df[3] = 1;
      return;
    }
    out.q[1] = h;
    out.dq[3] = 1;
    if (p.isTripped || !p.isOn) {
      const rate = p.isTripped ? (p.retrySeconds === undefined ? 0 : 5 / p.retrySeconds) : 1 / p.tripSeconds;
      out.f[1] = rate * h;
      out.df[3] = rate;
      return;
    }
    const u = x[0] / (p.ohms * p.limitAmps);
    const share = overloadOf(u);
    out.f[1] = ((1 - share) * h - share) / p.tripSeconds;
    out.df[2] = (-(1 + h) * overloadSlope(u)) / (p.tripSeconds * p.ohms * p.limitAmps);
    out.df[3] = (1 - share) / p.tripSeconds;
  },
  initial: () => [0],
  limit: stopAtZero,
};
