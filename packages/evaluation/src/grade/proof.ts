import type { AttemptContext } from "../context";
import type { Evidence } from "./evidence";
import { indistinguishable } from "./indistinguishable";

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
export function measureProof(context: AttemptContext, evidence: Evidence): Proof {
  const others = evidence.standing.filter((group) => group !== evidence.truth);
  const equivalent =
    others.length > comparisonLimit
      ? []
      : others.filter((group) => {
          const rivals = evidence.survivors.filter((hypothesis) => hypothesis.group === group);
          return rivals.some((rival) =>
            rival.cars.some((faults) =>
              indistinguishable(context.document, context.scenario.system, context.variant.faults, faults),
            ),
          );
        });
  const rivals = others.filter((group) => !equivalent.includes(group));
  const known = evidence.steps[0]?.standing ?? evidence.groups;
  const atStart = known.filter((group) => !equivalent.includes(group)).length;
  const proven = rivals.length === 0;
  const narrowed =
    proven || atStart <= 1 ? 1 : Math.max(0, 1 - Math.log2(rivals.length + 1) / Math.log2(atStart));
  return { rivals, equivalent, proven, narrowed };
}
