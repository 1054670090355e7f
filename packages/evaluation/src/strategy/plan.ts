import type { VehicleDocument } from "@probeworthy/vehicle";
import type { AttemptContext } from "../context";
import { entropy } from "../reasoning/entropy";
import { type Candidate, candidatesOf } from "./candidates";
import { createPictures, type Picture } from "./car-pictures";
import type { Shown } from "./outcomes";
import { type Situation, situationsOf } from "./situations";
import { type TestSet, testsOf } from "./tests";

/**
 * A table of candidates × tests, filled as it is asked: one solution of a candidate's car in a situation answers every
 * test in it. It knows the scenario, the vehicle and the weather of the day, and nothing of the variant's faults; all
 * variants of one scenario may share it.
 */
export interface Plan {
  readonly document: Pick<VehicleDocument, "conditions">;
  readonly candidates: readonly Candidate[];
  /** Candidates by repair group, by their place in the list. */
  readonly members: ReadonlyMap<string, readonly number[]>;
  readonly situations: readonly Situation[];
  readonly set: TestSet;
  readonly pictures: ReturnType<typeof createPictures>;
}

export function createPlan(context: AttemptContext): Plan {
  const candidates = candidatesOf(context);
  const members = new Map<string, number[]>();
  for (const [index, { group }] of candidates.entries()) {
    const group_ = members.get(group) ?? [];
    members.set(group, group_);
    group_.push(index);
  }
  const set = testsOf(context);
  return {
    document: context.document,
    candidates,
    members,
    situations: situationsOf(context),
    set,
    pictures: createPictures(context.document, set),
  };
}

export const priorShares = ({ candidates }: Plan): Float64Array =>
  Float64Array.from(candidates, ({ prior }) => prior);

/** Solves the candidates at these places in a situation, a piece at a time; null for all others. */
export function* showAll(
  { candidates, pictures }: Plan,
  situation: Situation,
  places: ReadonlySet<number>,
): Generator<number, (Shown | null)[], void> {
  const shown: (Shown | null)[] = [];
  for (const [index, { cars }] of candidates.entries()) {
    if (!places.has(index)) {
      shown.push(null);
      continue;
    }
    const own: (Picture | null)[] = [];
    for (const faults of cars) {
      const before = pictures.solved();
      own.push(pictures(faults, situation));
      if (pictures.solved() !== before) yield index / candidates.length;
    }
    shown.push(own);
  }
  return shown;
}

/** Candidates below this part of the likeliest are not solved any more. */
const negligible = 1e-5;

/** Places of the candidates that count, the heaviest first. */
export function standingPlaces(shares: Float64Array): number[] {
  const most = Math.max(...shares);
  return [...shares.keys()]
    .filter((place) => (shares[place] ?? 0) > negligible * most)
    .sort((one, other) => (shares[other] ?? 0) - (shares[one] ?? 0) || one - other);
}

/** Shares by repair group. */
export function groupShares({ members }: Plan, shares: Float64Array): Map<string, number> {
  return new Map(
    [...members].map(([group, places]) => [
      group,
      places.reduce((sum, place) => sum + (shares[place] ?? 0), 0),
    ]),
  );
}

/** Uncertainty about the repair group, bits. */
export const uncertaintyOf = (groups: ReadonlyMap<string, number>): number => entropy([...groups.values()]);
