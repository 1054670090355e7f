import {
  cohenKappa,
  completeRows,
  type Divisor,
  itemDifficulty,
  itemDiscriminations,
  proportion,
  reliability,
  type Statistic,
  traceMastery,
} from "@probeworthy/gradebook";
import { describe, expect, it } from "vitest";
import { lsatSection6 } from "./lsat-section-6";

function answerOf<T>(statistic: Statistic<T>): T {
  if (!statistic.ok) throw new Error(JSON.stringify(statistic.error));
  return statistic.value;
}

// Ten students × ten items. Source: https://core.ecu.edu/wuenschk/StatHelp/KR20.txt
const students = [
  "1111110110",
  "1011011101",
  "1111011001",
  "0010001000",
  "0000010010",
  "1110111111",
  "1101110111",
  "1111111101",
  "0101111101",
  "1101101110",
].map((row) => [...row].map((digit): 0 | 1 => (digit === "1" ? 1 : 0)));

describe("ten students, ten items", () => {
  it("difficulties are the shares the source prints", () => {
    const shares = students[0]?.map((_, item) =>
      answerOf(itemDifficulty(students.map((row) => row[item] ?? null))),
    );
    expect(shares?.map(({ share }) => share)).toEqual([0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6]);
  });

  // Total variance 5.84 and Σpq 2.18 are printed in the source; the quotient and both standard errors were computed by an
  // independent program (R).
  it.each<[Divisor, number, number]>([
    ["attempts", Math.sqrt(5.84), 1.3317],
    ["attemptsLessOne", Math.sqrt(58.4 / 9), 1.4037],
  ])("divided by %s: KR-20 0.696347 and its standard error", (divisor, standardDeviation, standardError) => {
    const found = answerOf(reliability(students, divisor));
    expect(found.kr20).toBeCloseTo(0.696347, 6);
    expect(found.alpha).toBeCloseTo(0.696347, 6);
    expect(found.standardDeviation).toBeCloseTo(standardDeviation, 10);
    expect(found.standardError).toBeCloseTo(standardError, 4);
    // pq with a variance divided by N − 1 would give this.
    const mixed = (10 / 9) * (1 - 2.18 / (58.4 / 9));
    expect(mixed).toBeCloseTo(0.7378, 4);
    expect(Math.abs((found.kr20 ?? mixed) - mixed)).toBeGreaterThan(0.04);
  });

  // Computed by an independent program (R) from the source's data.
  it("item-total correlations, corrected and uncorrected", () => {
    const found = answerOf(itemDiscriminations(students)).map(answerOf);
    const corrected = [0.7059, 0.7059, 0, 0.4736, 0.5839, 0.2861, -0.0274, 0.7059, -0.1236, 0.4759];
    const uncorrected = [0.7946, 0.7946, 0.2027, 0.614, 0.7095, 0.4345, 0.1625, 0.7946, 0.0828, 0.6251];
    for (const [item, discrimination] of found.entries()) {
      expect(discrimination.corrected.r).toBeCloseTo(corrected[item] ?? Number.NaN, 4);
      expect(discrimination.uncorrected.r).toBeCloseTo(uncorrected[item] ?? Number.NaN, 4);
    }
  });
});

// Source: R packages psych 2.2.9 and ltm, descriptives of the data set.
describe("section 6 of the Law School Admission Test, classical", () => {
  it("shares, item-total correlations, alpha", () => {
    const { rows, leftOut } = completeRows(lsatSection6);
    expect([rows.length, leftOut]).toEqual([1000, 0]);
    const shares = [0.924, 0.709, 0.553, 0.763, 0.87];
    const including = [0.362, 0.5668, 0.6184, 0.5344, 0.4354];
    const excluding = [0.1128, 0.1532, 0.1728, 0.1444, 0.1216];
    for (const [item, found] of answerOf(itemDiscriminations(rows)).map(answerOf).entries()) {
      expect(answerOf(itemDifficulty(lsatSection6.map((row) => row[item] ?? null))).share).toBe(shares[item]);
      expect(found.uncorrected.r).toBeCloseTo(including[item] ?? Number.NaN, 4);
      expect(found.corrected.r).toBeCloseTo(excluding[item] ?? Number.NaN, 4);
    }
    const found = answerOf(reliability(rows, "attempts"));
    expect(found.alpha).toBeCloseTo(0.295, 5);
    expect(found.kr20).toBeCloseTo(0.295, 5);
    expect(found.mean).toBeCloseTo(3.819, 10);
    expect(found.standardDeviation ** 2).toBeCloseTo(1.07024, 5);
    // Computed by an independent program.
    expect(found.standardError).toBeCloseTo(0.8691, 3);
  });
});

describe("agreement", () => {
  // Source: the worked example 20, 5, 10, 15 at howcodex.com (Cohen's kappa); interval: R package psych, `cohen.kappa`.
  it("kappa 0.40 of two raters, 95 % 0.15 … 0.65", () => {
    const found = answerOf(
      cohenKappa([
        [20, 5],
        [10, 15],
      ]),
    );
    expect(found.observed).toBeCloseTo(0.7, 12);
    expect(found.expected).toBeCloseTo(0.5, 12);
    expect(found.kappa).toBeCloseTo(0.4, 12);
    expect(found.interval.low).toBeCloseTo(0.15, 2);
    expect(found.interval.high).toBeCloseTo(0.65, 2);
  });
});

describe("Wilson's interval", () => {
  // Cases of R. G. Newcombe 1998 (from memory) and of vassarstats.net/prop1.html (23 of 60); the ends were computed by an
  // independent program (R, prop.test without correction).
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
    [23, 60, 0.2709, 0.5098],
    [20, 20, 0.8389, 1],
  ])("%i of %i: %f … %f", (successes, attempts, low, high) => {
    const { interval } = answerOf(proportion(successes, attempts));
    expect(interval.low).toBeCloseTo(low, 4);
    expect(interval.high).toBeCloseTo(high, 4);
  });
});

describe("mastery tracing", () => {
  // Definitions: the published description of Bayesian knowledge tracing, parameters .5, .4, .2, .2; the sequence was
  // computed by an independent program.
  it("ten answers, mastery after each and prediction before each", () => {
    const steps = answerOf(
      traceMastery([0, 0, 1, 1, 1, 0, 1, 1, 0, 1], { initial: 0.5, learn: 0.4, slip: 0.2, guess: 0.2 }),
    );
    const mastery = [
      0.52, 0.527869, 0.890355, 0.98208, 0.997275, 0.993514, 0.999022, 0.999853, 0.999648, 0.999947,
    ];
    const predicted = [
      0.5, 0.512, 0.516721, 0.734213, 0.789248, 0.798365, 0.796108, 0.799413, 0.799912, 0.799789,
    ];
    for (const [index, step] of steps.entries()) {
      expect(step.mastery).toBeCloseTo(mastery[index] ?? Number.NaN, 6);
      expect(step.predicted).toBeCloseTo(predicted[index] ?? Number.NaN, 6);
    }
    expect(steps[0]?.posterior).toBeCloseTo(0.2, 12);
    expect(steps[1]?.posterior).toBeCloseTo(0.213115, 6);
  });
});
