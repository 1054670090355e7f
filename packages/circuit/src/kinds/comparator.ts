import type { NodeName } from "../network";

/**
 * A contact between a and b that a control voltage, v(positive) − v(negative), closes: above `thresholdVolts` plus half
 * the hysteresis, and opens below the threshold less half of it. With `closesBelow` the other way round. In a transient
 * the moment of crossing is located. Defaults: hysteresisVolts 0.1, closedOhms 1, openOhms 1e9, inputOhms 1e9 (between
 * positive and negative), open at the start.
 */
export interface Comparator {
  readonly kind: "comparator";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly positive: NodeName;
  readonly negative: NodeName;
  readonly thresholdVolts: number;
  readonly hysteresisVolts?: number;
  readonly closesBelow?: boolean;
  readonly initiallyClosed?: boolean;
  readonly closedOhms?: number;
  readonly openOhms?: number;
  readonly inputOhms?: number;
}
