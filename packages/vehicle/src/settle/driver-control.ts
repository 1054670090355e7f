import type { OperatingPoint } from "@probeworthy/circuit";
import { type CompiledDriver, leakageOhms } from "../compile/compile-module";
import type { ElementSetter } from "../compile/network-builder";

/** A low-side or high-side switch of a module. One that chatters within a settle stays off. */
export class DriverControl {
  private on = false;
  private timesOff = 0;
  private latchedOff = false;

  constructor(readonly driver: CompiledDriver) {}

  amps(point: OperatingPoint): number {
    return point.amps(this.driver.element);
  }

  latchOff(): void {
    this.latchedOff = true;
  }

  update(command: number, enabled: boolean, set: ElementSetter): boolean {
    const wanted = enabled && !this.latchedOff && command > 0.5;
    if (this.on && !wanted && ++this.timesOff >= 2) this.latchedOff = true;
    if (wanted === this.on) return false;
    this.on = wanted;
    this.write(set);
    return true;
  }

  write(set: ElementSetter): void {
    set.ohms(this.driver.element, this.on ? this.driver.onOhms : leakageOhms);
  }
}
