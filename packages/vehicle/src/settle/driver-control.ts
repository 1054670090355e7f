import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledDriver } from "../compile/module/outputs";
import type { ElementSetter } from "../compile/network-builder";
import type { Demand, OutputControl } from "./output-control";

/** A low-side or high-side switch of a module. One that chatters within a settle stays off. */
export class DriverControl implements OutputControl {
  private on = false;
  private timesOff = 0;
  private latchedOff: boolean;

  constructor(private readonly driver: CompiledDriver) {
    this.latchedOff = driver.dead;
  }

  amps(point: OperatingPoint): number {
    return point.amps(this.driver.element);
  }

  isOvershooting(): boolean {
    return false;
  }

  trips(point: OperatingPoint): boolean {
    if (!this.on || Math.abs(this.amps(point)) <= this.driver.limitAmps) return false;
    this.latchedOff = true;
    return true;
  }

  latchOff(): void {
    this.latchedOff = true;
  }

  update({ readings, enabled }: Demand, set: ElementSetter): boolean {
    const wanted = enabled && !this.latchedOff && this.driver.on(readings) > 0.5;
    if (this.on && !wanted && ++this.timesOff >= 2) this.latchedOff = true;
    if (wanted === this.on) return false;
    this.on = wanted;
    this.write(set);
    return true;
  }

  write(set: ElementSetter): void {
    set.ohms(this.driver.element, this.on ? this.driver.onOhms : this.driver.offOhms);
  }
}
