import fc from "fast-check";
import { expect } from "vitest";
import type { Circuit, OperatingPoint, SolveOptions } from "../circuit";
import type { CircuitElement } from "../network";
import { prepareCircuit } from "../prepare-circuit";
import type { Result } from "../result";
import { networkOf } from "./arbitrary-network";

/** The value; an error is the test's failure. */
export function requireValue<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.error.code}: ${result.error.message}`);
  return result.value;
}

export const prepared = (elements: readonly CircuitElement[]): Circuit =>
  requireValue(prepareCircuit(networkOf(elements)));

/**
 * The operating point. Several switching PTCs in one circuit may have none that can be found without time (see
 * kinds/switching-ptc): such a network is drawn anew. Any other error fails the test.
 */
export function solved(elements: readonly CircuitElement[], options?: SolveOptions): OperatingPoint {
  return pointOf(prepared(elements), elements, options);
}

export function pointOf(
  circuit: Circuit,
  elements: readonly CircuitElement[],
  options?: SolveOptions,
): OperatingPoint {
  const result = circuit.operatingPoint(options);
  if (!result.ok && result.error.code === "no_convergence") {
    fc.pre(elements.filter(({ kind }) => kind === "switchingPtc").length < 2);
  }
  return requireValue(result);
}

export const close = (a: number, b: number, relative = 1e-9, absolute = 1e-12): void =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(relative * Math.max(Math.abs(a), Math.abs(b)) + absolute);

/**
 * How near two solutions of one network can be in volts, besides a part of 1e-9: the last digits of large currents, which
 * resistances of up to 30 MΩ turn into volts. What flows in the starter's circuit has 60 mΩ to the ground.
 */
export function voltsFloor(elements: readonly CircuitElement[], point: OperatingPoint): number {
  const tied = new Set(["supply", "cable", "starter"]);
  const amps = elements.map(({ id }) => (tied.has(id) ? 0 : Math.abs(point.amps(id))));
  return 1e-9 + 1e-8 * Math.max(...amps);
}
