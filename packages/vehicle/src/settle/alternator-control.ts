import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledAlternator } from "../compile/components/supply";
import type { ElementSetter } from "../compile/network-builder";

/** How far the machine's own volts may rise above its set-point for the sake of a far sense point, V. Common practice, no source. */
const mostAbove = 1.5;

/**
 * A regulator that looks at the far end of a wire. When the wire or the cable beside it is open the sensed volts never
 * come right: the regulator then holds its own terminal `mostAbove` too high instead of climbing on.
 */
export class AlternatorControl {
  private sensing: boolean;

  constructor(
    private readonly alternator: CompiledAlternator,
    turns: boolean,
    set: ElementSetter,
  ) {
    this.sensing = turns;
    set.gain(alternator.sensing, turns ? 1 : 0);
  }

  /** True when it has given up looking and the circuit has to be solved again. */
  update(point: OperatingPoint, set: ElementSetter): boolean {
    const { id, sensing, output, ground, volts } = this.alternator;
    if (!this.sensing || point.volts(output) - point.volts(ground) <= volts + mostAbove) return false;
    this.sensing = false;
    set.gain(sensing, 0);
    set.volts(id, volts + mostAbove);
    return true;
  }
}
