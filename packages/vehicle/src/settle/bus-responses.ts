import type { OperatingPoint } from "@probeworthy/circuit";
import { ok, type Result } from "../result";
import type { VehicleError } from "../simulation/types";
import type { BusNode, Levels } from "./bus-node";
import type { LiveCircuit } from "./live-circuit";

/** What talkers do to the wires, worked out from one solution of the network at rest. */
export interface BusResponses {
  /** The wires while this talker is dominant; undefined where the network has to be solved to know. */
  levels(talker: BusNode): Levels | undefined;
  /** What the network is like in the mean while these talkers are dominant, each for its share of that time. */
  mean(shares: ReadonlyMap<BusNode, number>): OperatingPoint;
}

/**
 * A dominant driver is two sources laid across a network that answers along straight lines: how it answers to a current
 * through each driver is found once, and every talker is then a small linear system (superposition, and Thévenin for what
 * each driver sees) instead of a solve.
 */
export function busResponses(
  talkers: readonly BusNode[],
  recessive: OperatingPoint,
  live: LiveCircuit,
): Result<BusResponses, VehicleError> {
  const drivers = talkers.flatMap((talker) => talker.drivers);
  const answers = live.responses(drivers.map(({ wire, ground }) => [wire, ground]));
  if (!answers.ok) return answers;
  const { ohms, holds, shifted } = answers.value;
  const currents = new Map<BusNode, Float64Array>();
  let first = 0;
  for (const talker of talkers) {
    const amps = new Float64Array(drivers.length);
    const own = talker.drivers.map((driver, k) => ({ driver, at: first + k }));
    first += talker.drivers.length;
    const solved = solveDrivers(
      own.map(({ driver, at }) => ({
        left: driver.volts - (recessive.volts(driver.wire) - recessive.volts(driver.ground)),
        ohms: own.map(
          (other) =>
            ohms(other.at, driver.wire) - ohms(other.at, driver.ground) + (other.at === at ? driver.ohms : 0),
        ),
      })),
    );
    own.forEach(({ at }, k) => {
      amps[at] = solved[k] ?? 0;
    });
    if (holds(amps)) currents.set(talker, amps);
  }
  return ok({
    levels: (talker) => {
      const amps = currents.get(talker);
      if (!amps) return undefined;
      const flowing = [...amps.entries()].filter(([, value]) => value !== 0);
      return {
        volts: (node) =>
          recessive.volts(node) + flowing.reduce((sum, [at, value]) => sum + value * ohms(at, node), 0),
      };
    },
    mean: (shares) => {
      const total = [...shares.values()].reduce((sum, share) => sum + share, 0);
      const mean = new Float64Array(drivers.length);
      for (const [talker, share] of shares)
        currents.get(talker)?.forEach((value, at) => {
          mean[at] = (mean[at] ?? 0) + (share / total) * value;
        });
      return shifted(mean);
    },
  });
}

interface Row {
  readonly left: number;
  readonly ohms: readonly number[];
}

/** Amps of one or two drivers by Cramer's rule. */
function solveDrivers(rows: readonly Row[]): number[] {
  const [one, two] = rows;
  if (!one) return [];
  const [a = 0, b = 0] = one.ohms;
  if (!two) return [one.left / a];
  const [c = 0, d = 0] = two.ohms;
  const determinant = a * d - b * c;
  return [(one.left * d - b * two.left) / determinant, (a * two.left - one.left * c) / determinant];
}
