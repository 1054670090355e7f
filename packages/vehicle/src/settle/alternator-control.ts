import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledAlternator } from "../compile/components/supply";
import type { ElementSetter } from "../compile/network-builder";

/** How far the machine's own volts may rise above its set-point for the sake of a far sense point, V. Common practice, no source. */
const mostAbove = 1.5;
/** Sensed volts below this part of the set-point are a broken wire: the regulator then holds its own terminal. */
const brokenShare = 0.3;
const closeEnough = 1e-6;

/**
 * A regulator that looks at the far end of a wire: raises the volts at its own terminal until the sensed ones are right,
 * by at most `mostAbove`. With the wire open it holds its own terminal that much too high.
 */
export class AlternatorControl {
  private above = 0;

  constructor(
    private readonly alternator: CompiledAlternator,
    private readonly turns: boolean,
  ) {}

  update(point: OperatingPoint, set: ElementSetter): boolean {
    if (!this.turns) return false;
    const { id, sense, ground, volts } = this.alternator;
    const sensed = point.volts(sense) - point.volts(ground);
    const broken = sensed < brokenShare * volts;
    const wanted = broken ? mostAbove : Math.max(0, Math.min(mostAbove, this.above + volts - sensed));
    if (Math.abs(wanted - this.above) <= closeEnough) return false;
    this.above = wanted;
    set.volts(id, volts + wanted);
    return true;
  }
}
