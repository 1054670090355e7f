import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledBridge } from "../compile/module/outputs";
import type { ElementSetter } from "../compile/network-builder";
import { type Demand, type OutputControl, writeLeg } from "./output-control";

/** How close the regulated current comes to its target, as a part of it. */
const currentTolerance = 1e-7;

/** First guess of the loop resistance, Ω: too low rather than too high, so that the search comes from below. */
const guessOhms = 0.03;

/** Change of a bridge's own feed current, as a part of it, from which on the source resistance is measured. */
const sourceStep = 0.1;
/** Change of the load's current, as a part of it, from which on the load's slope is measured. */
const loopStep = 1e-5;

/**
 * Finds the duty at which a bridge's load current meets its target I*. The load then needs U = E + R·I* (a motor that
 * turns has an E of its own); with the feed's open volts V and source resistance Rs that is met at the duty
 *   d = 2·U / (V + √(V² − 4·Rs·I*·U))
 * and nowhere when the root is imaginary or d > 1: a current regulator then stands at full duty. E, R, V and Rs are
 * measured from the last two solutions.
 */
export class BridgeControl implements OutputControl {
  private on = false;
  private duty = 0;
  private side: 0 | 1 = 0;
  private target = 0;
  private sample: { volts: number; amps: number } | undefined;
  private sourceOhms = 0;
  private latchedOff: boolean;
  /** Set after the feed has collapsed once: the target is then approached from nothing, in steps. */
  private cautious = false;
  private loop: { readonly volts: number; readonly amps: number; readonly ohms: number } | undefined;
  private lastGap: { readonly target: number; readonly gap: number } | undefined;

  constructor(private readonly bridge: CompiledBridge) {
    this.latchedOff = bridge.dead;
  }

  /** Load current, A, positive from plus to minus through the load. */
  amps(point: OperatingPoint): number {
    const legAmps = point.amps(this.bridge.legs[this.side].path);
    return this.side === 0 ? legAmps : -legAmps;
  }

  private feedVolts(point: OperatingPoint): number {
    return point.volts(this.bridge.feed) - point.volts(this.bridge.return);
  }

  isOvershooting(point: OperatingPoint): boolean {
    return this.on && Math.abs(this.amps(point)) > Math.abs(this.target) * (1 + 1e-6) + 1e-6;
  }

  trips(): boolean {
    return false;
  }

  latchOff(): void {
    this.latchedOff = true;
  }

  update({ readings, enabled, damped, point }: Demand, set: ElementSetter): boolean {
    const asked = enabled ? this.bridge.target(readings) : 0;
    const low = this.feedVolts(point) < this.bridge.minimumFeedVolts;
    const overshoots = this.isOvershooting(point);
    if (this.on && low && enabled && !overshoots) {
      // A feed that collapses under load and recovers without it would chatter. A law that backs off with the voltage may
      // still find its place from below; without one the bridge stays off.
      if (this.cautious) this.latchedOff = true;
      else return this.startAgain(set);
    }
    const on = enabled && !this.latchedOff && (!low || (this.on && overshoots));
    if (!on) return this.apply(false, 0, this.side, asked, set);
    const target = this.approach(asked);
    const unsettled = target !== asked;
    const side = target < 0 ? 1 : 0;
    if (!this.on || side !== this.side || this.duty === 0 || target === 0) {
      const guess = Math.min(1, (Math.abs(target) * guessOhms) / Math.max(1, this.feedVolts(point)));
      this.sample = { volts: this.feedVolts(point), amps: 0 };
      return this.apply(true, guess, side, target, set) || unsettled;
    }
    const wanted = this.nextDuty(Math.abs(target), point);
    return this.apply(true, damped ? (wanted + this.duty) / 2 : wanted, side, target, set) || unsettled;
  }

  private startAgain(set: ElementSetter): boolean {
    this.cautious = true;
    this.lastGap = undefined;
    this.apply(true, 0, this.side, 0, set);
    return true;
  }

  /**
   * The target to regulate to next. A law may lower what it asks for with the very voltage its current pulls down: the
   * target is the root of asked(target) − target, found by the secant rule, never faster than plain repetition (a slope
   * flatter than −1 is taken as −1).
   */
  private approach(asked: number): number {
    if (!this.on) return asked;
    const gap = asked - this.target;
    if (Math.abs(gap) <= currentTolerance * Math.max(1, Math.abs(asked))) return asked;
    const moved = this.lastGap ? this.target - this.lastGap.target : 0;
    const slope = this.lastGap && moved !== 0 ? (gap - this.lastGap.gap) / moved : this.cautious ? -4 : -1;
    this.lastGap = { target: this.target, gap };
    return this.target + gap / Math.max(1, -slope);
  }

  private nextDuty(target: number, point: OperatingPoint): number {
    const amps = point.amps(this.bridge.legs[this.side].path);
    const volts = this.feedVolts(point);
    const feedAmps = this.duty * amps;
    // Other loads move the feed too: only a large step of this one says something about the source.
    if (this.sample && Math.abs(feedAmps - this.sample.amps) > sourceStep * Math.max(0.1, feedAmps))
      this.sourceOhms = Math.max(0, (this.sample.volts - volts) / (feedAmps - this.sample.amps));
    this.sample = { volts, amps: feedAmps };
    if (Math.abs(amps - target) <= currentTolerance * target) return this.duty;
    if (amps <= 1e-9) return 1; // an open load: the regulator winds up to full duty
    const legVolts = this.loopVolts(this.duty * volts, amps, target);
    const openVolts = volts + this.sourceOhms * feedAmps;
    const root = openVolts ** 2 - 4 * this.sourceOhms * target * legVolts;
    if (root < 0) return 1;
    return Math.max(1e-6, Math.min(1, (2 * legVolts) / (openVolts + Math.sqrt(root))));
  }

  /** Volts the load needs for its target: along the line through the last two solutions, at first through the origin. */
  private loopVolts(volts: number, amps: number, target: number): number {
    const { loop } = this;
    const moved = loop ? amps - loop.amps : 0;
    const ohms =
      loop && Math.abs(moved) > loopStep * amps ? (volts - loop.volts) / moved : (loop?.ohms ?? volts / amps);
    const slope = ohms > 0 ? ohms : volts / amps;
    this.loop = { volts, amps, ohms: slope };
    return Math.max(0, volts + slope * (target - amps));
  }

  private apply(on: boolean, duty: number, side: 0 | 1, target: number, set: ElementSetter): boolean {
    const changed =
      on !== this.on || side !== this.side || Math.abs(duty - this.duty) > 1e-11 * Math.max(duty, 1e-3);
    this.target = target;
    if (!changed) return false;
    if (!on || side !== this.side) this.loop = undefined;
    this.on = on;
    this.duty = duty;
    this.side = side;
    this.write(set);
    return true;
  }

  /** Writes the present duty into the circuit. */
  write(set: ElementSetter): void {
    this.bridge.legs.forEach((leg, position) => {
      writeLeg(leg, this.on, position === this.side ? this.duty : 0, set);
    });
  }
}
