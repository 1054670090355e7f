import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledLinear } from "../compile/module/outputs";
import type { ElementSetter } from "../compile/network-builder";
import type { Demand, OutputControl } from "./output-control";

/** How close the load comes to its volts, V. */
const closeVolts = 1e-7;
/** A load that takes less is open, A. */
const openAmps = 1e-6;

/**
 * A transistor between load and ground that leaves the load its volts, as a resistance R that is looked for. With the
 * load's resistance v/i and the feed at V the first guess is R = (V − v*)·v/(i·v*), exact when both stay as they are;
 * from there on the secant rule on ln R, kept between an R that was too low and one that was too high. Fully on it can
 * do no more than `onOhms`.
 */
export class LinearControl implements OutputControl {
  private ohms: number;
  private latchedOff: boolean;
  private asked = 0;
  private tooLow = 0;
  private tooHigh = 0;
  private last: { readonly log: number; readonly excess: number } | undefined;

  constructor(private readonly linear: CompiledLinear) {
    this.latchedOff = linear.dead;
    this.ohms = linear.offOhms;
  }

  amps(point: OperatingPoint): number {
    return point.amps(this.linear.element);
  }

  isOvershooting(): boolean {
    return false;
  }

  trips(): boolean {
    return false;
  }

  latchOff(): void {
    this.latchedOff = true;
  }

  update({ readings, enabled, damped, point }: Demand, set: ElementSetter): boolean {
    const wish = enabled && !this.latchedOff ? Math.max(0, this.linear.loadVolts(readings)) : 0;
    const { onOhms, offOhms } = this.linear;
    if (wish <= closeVolts) {
      this.asked = 0;
      return this.apply(offOhms, set);
    }
    const asked = damped && this.asked > 0 ? (wish + this.asked) / 2 : wish;
    if (Math.abs(asked - this.asked) > closeVolts) {
      const starts = this.asked === 0;
      this.asked = asked;
      this.tooLow = onOhms;
      this.tooHigh = offOhms;
      this.last = undefined;
      if (starts) return this.apply(onOhms, set);
    }
    const excess = this.loadVolts(point) - asked;
    if (Math.abs(excess) <= closeVolts) return false;
    // Too many volts at the load ask for more resistance, too few for less.
    if (excess > 0) this.tooLow = Math.max(this.tooLow, this.ohms);
    else this.tooHigh = Math.min(this.tooHigh, this.ohms);
    if (excess < 0 && this.ohms <= onOhms) return false;
    const next = this.next(excess, point);
    this.last = { log: Math.log(this.ohms), excess };
    return this.apply(next, set);
  }

  private loadVolts(point: OperatingPoint): number {
    return point.volts(this.linear.feed) - point.volts(this.linear.terminal);
  }

  private next(excess: number, point: OperatingPoint): number {
    const log = Math.log(this.ohms);
    const { last } = this;
    let guess: number;
    if (last && last.excess !== excess && last.log !== log)
      guess = Math.exp(log - (excess * (log - last.log)) / (excess - last.excess));
    else {
      const load = this.loadVolts(point) / Math.max(1e-9, this.amps(point));
      const feed = point.volts(this.linear.feed) - point.volts(this.linear.ground);
      guess = ((feed - this.asked) * load) / this.asked;
    }
    // An open load has its volts, or none, whatever the transistor does.
    if (this.amps(point) < openAmps && excess > 0) return this.linear.offOhms;
    if (!(guess > this.tooLow && guess < this.tooHigh)) {
      // Nothing left between: the feed is lower than what the load should have, or the load is open.
      if (guess <= this.linear.onOhms) return this.linear.onOhms;
      guess = Math.sqrt(this.tooLow * this.tooHigh);
    }
    return guess;
  }

  private apply(ohms: number, set: ElementSetter): boolean {
    const bounded = Math.max(this.linear.onOhms, Math.min(this.linear.offOhms, ohms));
    if (Math.abs(bounded - this.ohms) <= 1e-12 * bounded) return false;
    this.ohms = bounded;
    this.write(set);
    return true;
  }

  write(set: ElementSetter): void {
    set.ohms(this.linear.element, this.ohms);
  }
}
