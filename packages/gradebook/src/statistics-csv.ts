import { stringify } from "csv-stringify/browser/esm/sync";
import { harmless } from "./csv-text";
import type { CsvOptions } from "./gradebook-csv";
import type { ConfusionMatrix } from "./statistics/confusion-matrix";
import type { Discrimination } from "./statistics/item-analysis";
import type { Proportion } from "./statistics/proportion";
import type { Statistic } from "./statistics/result";

export interface ItemStatistics {
  readonly title: string;
  readonly difficulty: Statistic<Proportion>;
  readonly discrimination: Statistic<Discrimination>;
}

/**
 * One row an item: attempts, right, share with its interval, corrected discrimination with its interval. Cells are empty
 * where there are too few attempts. File format as the gradebook's.
 */
export function itemStatisticsCsv(items: readonly ItemStatistics[], options: CsvOptions = {}): string {
  const figure = figureWriter(options);
  const header = [
    "Item",
    "Attempts",
    "Right",
    "Share right",
    "Share right, 95 % from",
    "to",
    "Item-rest correlation",
    "Correlation, 95 % from",
    "to",
  ];
  const rows = items.map(({ title, difficulty, discrimination }) => {
    const share = difficulty.ok ? difficulty.value : null;
    const attempts = difficulty.ok
      ? difficulty.value.attempts
      : difficulty.error.code === "too_few_attempts"
        ? difficulty.error.have
        : null;
    const separates = discrimination.ok ? discrimination.value.corrected : null;
    return [
      harmless(title),
      attempts === null ? "" : String(attempts),
      share === null ? "" : String(share.successes),
      figure(share?.share),
      figure(share?.interval.low),
      figure(share?.interval.high),
      figure(separates?.r),
      figure(separates?.interval.low),
      figure(separates?.interval.high),
    ];
  });
  return toText([header, ...rows], options);
}

export interface ConfusionTable {
  readonly matrix: ConfusionMatrix;
  /** What a kind is called in words. */
  readonly titleOf: (kind: string) => string;
}

/** True kinds down, named kinds across, attempts in the cells. */
export function confusionCsv({ matrix, titleOf }: ConfusionTable, options: CsvOptions = {}): string {
  const header = ["True kind", ...matrix.kinds.map((kind) => harmless(titleOf(kind))), "Attempts"];
  const rows = matrix.rows.map(({ kind, counts, attempts }) => [
    harmless(titleOf(kind)),
    ...counts.map(String),
    String(attempts),
  ]);
  return toText([header, ...rows], options);
}

const figureWriter =
  ({ decimalComma = false }: CsvOptions) =>
  (value: number | undefined): string =>
    value === undefined ? "" : value.toFixed(3).replace(".", decimalComma ? "," : ".");

const toText = (rows: readonly string[][], { separator = "," }: CsvOptions): string =>
  stringify([...rows], { delimiter: separator, record_delimiter: "windows", bom: true });
