import type { AttemptContext } from "../context";
import type { Evidence } from "./evidence";
import { indistinguishable, showCar } from "./indistinguishable";
import type { Steps } from "./progress";

export interface Proof {
  /** Rival groups still standing at the end that some test could have told from the truth. */
  readonly rivals: readonly string[];
  /** Rival groups no test can tell from the truth; they do not stand in the way of a proof. */
  readonly equivalent: readonly string[];
  readonly proven: boolean;
  /** Share of what there was to find out after the hand-over that has been found out, 0 … 1; 1 when proven. */
  readonly narrowed: number;
}

/** Comparing two causes everywhere is dear; with more rivals than this standing nothing is near a proof. */
const comparisonLimit = 4;

/** Measures how far the readings have narrowed the causes down. Information in bits: log2 of the groups standing. */
export function* measureProof(context: AttemptContext, evidence: Evidence): Steps<Proof> {
  const others = evidence.standing.filter((group) => group !== evidence.truth);
  const equivalent = others.length > comparisonLimit ? [] : yield* equivalentTo(context, evidence, others);
  const rivals = others.filter((group) => !equivalent.includes(group));
  const known = evidence.steps[0]?.standing ?? evidence.groups;
  const atStart = known.filter((group) => !equivalent.includes(group)).length;
  const proven = rivals.length === 0;
  const narrowed =
    proven || atStart <= 1 ? 1 : Math.max(0, 1 - Math.log2(rivals.length + 1) / Math.log2(atStart));
  return { rivals, equivalent, proven, narrowed };
}

function* equivalentTo(
  { document, scenario, variant }: AttemptContext,
  { survivors }: Evidence,
  groups: readonly string[],
): Steps<string[]> {
  const truth = showCar(document, scenario.system, variant.faults);
  const equivalent: string[] = [];
  for (const [position, group] of groups.entries()) {
    const ways = survivors.filter((hypothesis) => hypothesis.group === group);
    for (const faults of ways.flatMap(({ cars }) => cars)) {
      const progress = position / groups.length;
      if (!(yield* indistinguishable(truth, showCar(document, scenario.system, faults), progress))) continue;
      equivalent.push(group);
      break;
    }
  }
  return equivalent;
}
