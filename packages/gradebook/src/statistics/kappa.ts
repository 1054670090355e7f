import { sum } from "./moments";
import { type Interval, invalidInput, known, type Statistic, tooFewAttempts, unknown, z95 } from "./result";

export interface Agreement {
  readonly attempts: number;
  /** Share of agreement seen, and share that chance alone would give. */
  readonly observed: number;
  readonly expected: number;
  /** (observed − expected) / (1 − expected): 1 full agreement, 0 no better than chance. */
  readonly kappa: number;
  readonly standardError: number;
  /** κ ± 1.96 standard errors, cut to −1 … 1. */
  readonly interval: Interval;
}

/**
 * Cohen's kappa of two raters of the same attempts. `counts` is categories × categories: row the first rater's category,
 * column the second's.
 * Needs 2k² attempts for k categories: the standard error is a large-sample one, and with fewer there is less than two
 * attempts a cell on average (a rule of thumb due to Cicchetti, from memory).
 * Source: J. Cohen 1960; the standard error by Fleiss, Cohen and Everitt 1969 (from memory).
 * Errors: `too_few_attempts`, `too_few_items` (two categories are needed), `no_spread` (both raters used one and the same
 * category only, so chance explains everything), `invalid_input`.
 */
export function cohenKappa(counts: readonly (readonly number[])[]): Statistic<Agreement> {
  const size = counts.length;
  for (const [row, cells] of counts.entries()) {
    if (cells.length !== size)
      return invalidInput(`${row}`, `must have ${size} entries: the table is square`);
    const bad = cells.findIndex((cell) => !Number.isInteger(cell) || cell < 0);
    if (bad >= 0) return invalidInput(`${row}.${bad}`, "must be a whole number from 0");
  }
  if (size < 2) return unknown({ code: "too_few_items", have: size, need: 2 });
  const attempts = sum(counts.map(sum));
  const need = 2 * size * size;
  if (attempts < need) return tooFewAttempts(attempts, need);

  const share = (row: number, column: number) => (counts[row]?.[column] ?? 0) / attempts;
  const index = counts.map((_, category) => category);
  const rows = index.map((row) => sum(index.map((column) => share(row, column))));
  const columns = index.map((column) => sum(index.map((row) => share(row, column))));
  const rowShare = (category: number) => rows[category] ?? 0;
  const columnShare = (category: number) => columns[category] ?? 0;
  const observed = sum(index.map((category) => share(category, category)));
  const expected = sum(index.map((category) => rowShare(category) * columnShare(category)));
  if (1 - expected < 1e-12) return unknown({ code: "no_spread" });

  const kappa = (observed - expected) / (1 - expected);
  const agreeing = sum(
    index.map((i) => share(i, i) * (1 - (rowShare(i) + columnShare(i)) * (1 - kappa)) ** 2),
  );
  const differing =
    (1 - kappa) ** 2 *
    sum(
      index.flatMap((i) =>
        index.map((j) => (i === j ? 0 : share(i, j) * (columnShare(i) + rowShare(j)) ** 2)),
      ),
    );
  const correction = (kappa - expected * (1 - kappa)) ** 2;
  const standardError = Math.sqrt(Math.max(0, agreeing + differing - correction) / attempts) / (1 - expected);
  return known({
    attempts,
    observed,
    expected,
    kappa,
    standardError,
    interval: {
      low: Math.max(-1, kappa - z95 * standardError),
      high: Math.min(1, kappa + z95 * standardError),
    },
  });
}
