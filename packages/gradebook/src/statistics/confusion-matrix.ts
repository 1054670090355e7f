import { attemptsForDifficulty } from "./item-analysis";
import { type Agreement, cohenKappa } from "./kappa";
import { sum } from "./moments";
import { type Proportion, proportion } from "./proportion";
import { type Statistic, tooFewAttempts } from "./result";

/** A submitted attempt, as far as this table is concerned with it. */
export interface DiagnosedAttempt {
  /**
   * The hidden faults, none for a car with nothing wrong. `kind` is a word of the same list as the names; `rightNames` are the kinds that name this fault rightly: an
   * open wire may be named as open or as broken, and both are right.
   */
  readonly faults: readonly { readonly kind: string; readonly rightNames: readonly string[] }[];
  /** The kinds the learner named, none for "nothing is wrong". */
  readonly named: readonly string[];
}

/** The row and the column of cars with nothing wrong and of reports that name nothing. */
export const nothingWrong = "nothingWrong";

export interface ConfusionRow {
  /** The true kind. */
  readonly kind: string;
  /** Attempts by named kind, in the order of `kinds`; a right name of any wording stands under the true kind. */
  readonly counts: readonly number[];
  readonly attempts: number;
  /** Named rightly, of all attempts with this kind. Too few below five, for the reason given at item difficulty. */
  readonly right: Statistic<Proportion>;
  /** The wrong name given most often, if there was one; of several equally often, the first in `kinds`. */
  readonly takenFor: { readonly kind: string; readonly attempts: number } | null;
}

export interface ConfusionMatrix {
  /** Names of rows and of columns alike: "nothing wrong" first if it occurs, then the kinds in alphabetical order. */
  readonly kinds: readonly string[];
  readonly rows: readonly ConfusionRow[];
  /** Attempts in the table. */
  readonly attempts: number;
  /** Attempts left out: which of several faults a name was meant for cannot be known. */
  readonly severalFaults: number;
  /** Attempts left out: one fault or none, but more than one kind named. */
  readonly severalNamed: number;
  /** Agreement of truth and report beyond chance. */
  readonly agreement: Statistic<Agreement>;
}

/**
 * Which kinds of fault a class takes for which. Only attempts with at most one fault and at most one named kind are in the
 * table; the others are counted apart, so that naming every kind does not pass for knowing.
 * A kind repeated in `named` counts once. No errors: an empty class gives an empty table.
 */
export function confusionMatrix(attempts: readonly DiagnosedAttempt[]): ConfusionMatrix {
  const pairs: { truth: string; named: string }[] = [];
  let [severalFaults, severalNamed] = [0, 0];
  for (const { faults, named } of attempts) {
    const names = [...new Set(named)];
    const [fault] = faults;
    const [name] = names;
    if (faults.length > 1) severalFaults += 1;
    else if (names.length > 1) severalNamed += 1;
    else {
      const truth = fault?.kind ?? nothingWrong;
      const isRight =
        name !== undefined && fault !== undefined && (name === fault.kind || fault.rightNames.includes(name));
      pairs.push({ truth, named: isRight ? truth : (name ?? nothingWrong) });
    }
  }
  const kinds = [...new Set(pairs.flatMap(({ truth, named }) => [truth, named]))].sort(inTableOrder);
  const counts = kinds.map((truth) =>
    kinds.map((named) => pairs.filter((pair) => pair.truth === truth && pair.named === named).length),
  );
  return {
    kinds,
    rows: kinds.map((kind, row) => rowOf(kind, row, counts[row] ?? [], kinds)),
    attempts: pairs.length,
    severalFaults,
    severalNamed,
    agreement: cohenKappa(counts),
  };
}

function rowOf(kind: string, own: number, counts: readonly number[], kinds: readonly string[]): ConfusionRow {
  const attempts = sum(counts);
  const wrong = counts.map((count, column) => (column === own ? 0 : count));
  const most = Math.max(0, ...wrong);
  const mistaken = kinds[wrong.indexOf(most)];
  return {
    kind,
    counts,
    attempts,
    right:
      attempts < attemptsForDifficulty
        ? tooFewAttempts(attempts, attemptsForDifficulty)
        : proportion(counts[own] ?? 0, attempts),
    takenFor: most === 0 || mistaken === undefined ? null : { kind: mistaken, attempts: most },
  };
}

function inTableOrder(a: string, b: string): number {
  if (a === b) return 0;
  if (a === nothingWrong) return -1;
  if (b === nothingWrong) return 1;
  return a < b ? -1 : 1;
}
