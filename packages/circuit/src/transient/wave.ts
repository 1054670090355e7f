/**
 * How a number (or, by 0 and 1, a flag) of an element goes in time. Seconds are those of the run, not from its start.
 *
 * steps: from each of the rising `times` on the value of the same place; before the first time the element's own.
 * line: straight lines through the points; level before the first and after the last.
 * pulse: `low` until `delaySeconds` (0), then in each period of 1/hertz `high` for the part `duty`. With `riseSeconds`
 *   (0) each flank is a ramp of that length that starts where the jump would be; it must fit into both parts.
 * sine: offset + amplitude · sin(2π·hertz·(t − delaySeconds) + phase); until `delaySeconds` (none) its value there.
 */
export type Wave =
  | {
      readonly kind: "steps";
      readonly times: readonly number[];
      readonly values: readonly (number | boolean)[];
    }
  | { readonly kind: "line"; readonly times: readonly number[]; readonly values: readonly number[] }
  | {
      readonly kind: "pulse";
      readonly low: number | boolean;
      readonly high: number | boolean;
      readonly hertz: number;
      readonly duty: number;
      readonly delaySeconds?: number;
      readonly riseSeconds?: number;
    }
  | {
      readonly kind: "sine";
      readonly offset?: number;
      readonly amplitude: number;
      readonly hertz: number;
      readonly phaseDegrees?: number;
      readonly delaySeconds?: number;
    };
