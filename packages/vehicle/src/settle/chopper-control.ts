import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledChopper } from "../compile/module/outputs";
import type { ElementSetter } from "../compile/network-builder";
import { type Demand, type OutputControl, writeLeg } from "./output-control";

/** Two duties this close are the same; the second while they are averaged. */
const sameDuty = [1e-9, 1e-6] as const;

/** A pulse-width modulated half bridge by its mean. At duty 0 it is off and leaves its terminal to itself. */
export class ChopperControl implements OutputControl {
  private duty = 0;
  private latchedOff: boolean;

  constructor(private readonly chopper: CompiledChopper) {
    this.latchedOff = chopper.dead;
  }

  amps(point: OperatingPoint): number {
    return point.amps(this.chopper.leg.path);
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

  update({ readings, enabled, damped }: Demand, set: ElementSetter): boolean {
    const asked = enabled && !this.latchedOff ? Math.max(0, Math.min(1, this.chopper.duty(readings))) : 0;
    const wanted = damped && asked > 0 ? (asked + this.duty) / 2 : asked;
    if (wanted === this.duty || (wanted > 0 && Math.abs(wanted - this.duty) <= sameDuty[damped ? 1 : 0]))
      return false;
    this.duty = wanted;
    this.write(set);
    return true;
  }

  write(set: ElementSetter): void {
    writeLeg(this.chopper.leg, this.duty > 0, this.duty, set);
  }
}
