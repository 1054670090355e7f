import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledAlternator } from "../compile/components/supply";
import type { ElementSetter } from "../compile/network-builder";

/** How far the machine's own volts may rise above its set-point for the sake of a far sense point, V. Common practice, no source. */
const mostAbove = 1.5;
/** Sensed volts below this part of the set-point are a broken wire: the regulator then holds its own terminal. */
const brokenShare = 0.3;
/** How near the sensed volts come, V: below what any display shows. */
const closeEnough = 1e-5;

/**
 * A regulator that looks at the far end of a wire: raises the volts at its own terminal until the sensed ones are right,
 * by at most `mostAbove`. With the wire open it holds its own terminal that much too high.
 */
export class AlternatorControl {
  private above = 0;
  /** Where the search stood before, and how much the sensed volts then lacked. */
  private last: { readonly above: number; readonly lack: number } | undefined;

  constructor(
    private readonly alternator: CompiledAlternator,
    private readonly turns: boolean,
  ) {}

  update(point: OperatingPoint, set: ElementSetter): boolean {
    if (!this.turns) return false;
    const { id, sense, ground, volts } = this.alternator;
    const sensed = point.volts(sense) - point.volts(ground);
    const lack = volts - sensed;
    const wanted = sensed < brokenShare * volts ? mostAbove : this.next(lack);
    this.last = { above: this.above, lack };
    if (Math.abs(wanted - this.above) <= closeEnough) return false;
    this.above = wanted;
    set.volts(id, volts + wanted);
    return true;
  }

  /** By the secant rule once two places are known; a volt more at the terminal is a volt more at the far end at first. */
  private next(lack: number): number {
    const { last } = this;
    const moved = last ? this.above - last.above : 0;
    const slope = last && moved !== 0 ? (last.lack - lack) / moved : 1;
    const step = slope > 0.2 && slope < 2 ? lack / slope : lack;
    return Math.max(0, Math.min(mostAbove, this.above + step));
  }
}
