import type { Report } from "../command";
import type { AttemptContext } from "../context";
import { judgeNaming } from "./naming";
import { type CauseKind, claimsOf, kindsOf, repairPlace } from "./repair-group";

/** What was wrong and what was said to be, by kind, for statistics over many attempts. Secret until the report is in. */
export interface Diagnosis {
  /** More than half of the share the naming of the cause is given in grading. */
  readonly causeCorrect: boolean;
  /** None for a car with nothing to repair. `kind` is the best word for the fault; `rightNames` are all that name it. */
  readonly faults: readonly { readonly kind: CauseKind; readonly rightNames: readonly CauseKind[] }[];
  /** None for a report that says nothing is wrong. */
  readonly named: readonly CauseKind[];
}

/** Judges a report as grading does, whatever an older grade of the same attempt may say. */
export function diagnosisOf(context: AttemptContext, report: Report): Diagnosis {
  const { document, variant } = context;
  const faults = variant.normal
    ? []
    : variant.faults.filter((fault) => repairPlace(fault, document) !== null);
  return {
    causeCorrect: judgeNaming(context, report).share > 0.5,
    faults: faults.flatMap((fault) => {
      const rightNames = kindsOf(fault);
      return rightNames[0] === undefined ? [] : [{ kind: rightNames[0], rightNames }];
    }),
    named: claimsOf(report).map(({ kind }) => kind),
  };
}
