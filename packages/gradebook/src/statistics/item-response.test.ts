import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectedAbility } from "./ability";
import type { Answer } from "./answers";
import { conditionalRasch, elementarySymmetric } from "./conditional-rasch";
import { completeDerivatives, expectation, parameterCount } from "./expectation";
import { oneParameterFit, twoParameterFit } from "./marginal-fit";
import { patternsOf } from "./patterns";
import { standardNormal61 } from "./quadrature";
import { invertPositiveDefinite, multiply } from "./symmetric";

/** Answers of 64 learners to four items that hang together, with some scatter. */
const mixed: readonly (readonly (0 | 1)[])[] = Array.from({ length: 64 }, (_, row) =>
  [0, 1, 2, 3].map((item): 0 | 1 => ((row % 8) + ((row * 5 + item * 11) % 9) > 5 + item ? 1 : 0)),
);

/** The same number of learners, each combination of answers equally often: nothing in common to be able at. */
const unrelated: readonly (readonly (0 | 1)[])[] = Array.from({ length: 64 }, (_, row) =>
  [1, 2, 4, 8].map((bit): 0 | 1 => (row & bit ? 1 : 0)),
);

describe("marginal likelihood", () => {
  const small = fc.double({ min: -2, max: 2, noNaN: true });

  it.each([true, false])("its gradient is that of its value (common slope: %s)", (commonSlope) => {
    const layout = { items: 3, commonSlope };
    const patterns = patternsOf([
      [1, 0, 1],
      [0, null, 1],
      [1, 1, 1],
      [1, 0, 1],
    ]);
    const size = parameterCount(layout);
    const valueAt = (parameters: readonly number[]) =>
      expectation(patterns, parameters, layout, standardNormal61).logLikelihood;
    fc.assert(
      fc.property(fc.array(small, { minLength: size, maxLength: size }), (parameters) => {
        const expected = expectation(patterns, parameters, layout, standardNormal61);
        const { gradient } = completeDerivatives(expected, parameters, layout, standardNormal61);
        for (const [moved, slope] of gradient.entries()) {
          const shifted = (by: number) =>
            parameters.map((value, index) => (index === moved ? value + by : value));
          expect((valueAt(shifted(1e-5)) - valueAt(shifted(-1e-5))) / 2e-5).toBeCloseTo(slope, 6);
        }
      }),
      { numRuns: 30 },
    );
  });

  it("an item not attempted changes nothing for the others, and empty rows do not count", () => {
    const widened: Answer[][] = [
      ...mixed.map((row): Answer[] => [...row, null]),
      [null, null, null, null, 1],
      [null, null, null, null, 0],
      [null, null, null, null, null],
    ];
    const plain = oneParameterFit(mixed);
    const wide = oneParameterFit(widened);
    if (!plain.ok || !wide.ok) throw new Error("expected two fits");
    expect(wide.value.attempts).toBe(mixed.length + 2);
    // Two lone answers to a fifth item add its own intercept and two halves of chance, ln ½ each.
    expect(wide.value.logLikelihood).toBeCloseTo(plain.value.logLikelihood + 2 * Math.log(0.5), 6);
    for (const [item, { difficulty }] of plain.value.items.entries()) {
      expect(wide.value.items[item]?.difficulty).toBeCloseTo(difficulty, 4);
    }
  });

  it("names what it lacks", () => {
    expect(oneParameterFit(mixed.slice(0, 29))).toMatchObject({
      error: { code: "too_few_attempts", have: 29, need: 30 },
    });
    expect(twoParameterFit(mixed)).toMatchObject({
      error: { code: "too_few_attempts", have: 64, need: 200 },
    });
    expect(oneParameterFit(mixed.map((row) => row.slice(0, 2)))).toMatchObject({
      error: { code: "too_few_items", have: 2, need: 3 },
    });
    expect(oneParameterFit(mixed.map(([a, b]) => [a ?? 0, b ?? 0, 1]))).toMatchObject({
      error: { code: "no_spread", item: 2 },
    });
    expect(oneParameterFit([...mixed, [1, 0, 1]])).toMatchObject({
      error: { code: "invalid_input", path: "64" },
    });
  });

  it("says so when nothing holds the items together: without a slope there is no difficulty", () => {
    expect(oneParameterFit(unrelated)).toEqual({ ok: false, error: { code: "no_finite_estimate" } });
  });

  it("says so when the slopes run away: items that copy each other", () => {
    const copies = Array.from({ length: 200 }, (_, row): (0 | 1)[] =>
      new Array<0 | 1>(4).fill(row % 2 ? 1 : 0),
    );
    expect(twoParameterFit(copies)).toMatchObject({ error: { code: "no_finite_estimate" } });
  });
});

describe("conditional Rasch", () => {
  it("elementary symmetric functions against a sum over all subsets", () => {
    expect(elementarySymmetric([2, 3, 5])).toEqual([1, 10, 31, 30]);
  });

  it("two items: the easiness is half the log odds of who got only one of them", () => {
    const rows = [...new Array(24).fill([1, 0]), ...new Array(8).fill([0, 1]), [1, 1], [0, 0]];
    const found = conditionalRasch(rows);
    if (!found.ok) throw new Error(found.error.code);
    const [first, second] = found.value.items;
    expect(first?.easiness).toBeCloseTo(Math.log(3) / 2, 10);
    expect(second?.easiness).toBeCloseTo(-Math.log(3) / 2, 10);
    // Half of √(1/24 + 1/8), the standard error of a log odds.
    expect(first?.standardError).toBeCloseTo(Math.sqrt(1 / 24 + 1 / 8) / 2, 10);
    expect(found.value.conditionalLogLikelihood).toBeCloseTo(24 * Math.log(0.75) + 8 * Math.log(0.25), 10);
    expect(found.value).toMatchObject({ attempts: 34, informative: 32 });
  });

  it("names what it lacks", () => {
    const onlyAll = new Array(40).fill([1, 1, 1]);
    expect(conditionalRasch(onlyAll)).toMatchObject({
      error: { code: "too_few_attempts", have: 0, need: 30 },
    });
    const neverBeaten = [...new Array(20).fill([1, 0, 0]), ...new Array(20).fill([1, 1, 0])];
    expect(conditionalRasch(neverBeaten)).toEqual({ ok: false, error: { code: "no_finite_estimate" } });
    expect(conditionalRasch([[1, 0.5]])).toMatchObject({ error: { code: "invalid_input", path: "0.1" } });
    expect(conditionalRasch([[1], [0]])).toMatchObject({ error: { code: "too_few_items", have: 1 } });
  });
});

describe("expected ability", () => {
  const items = [
    { discrimination: 1, difficulty: -1 },
    { discrimination: 1.5, difficulty: 0 },
    { discrimination: 0.8, difficulty: 1 },
  ];

  it("one more right answer never lowers it, and answering narrows it", () => {
    const estimateOf = (answers: readonly Answer[]) => {
      const found = expectedAbility(answers, items);
      if (!found.ok) throw new Error(found.error.code);
      return found.value;
    };
    const none = estimateOf([0, null, null]);
    expect(estimateOf([1, null, null]).estimate).toBeGreaterThan(none.estimate);
    expect(estimateOf([1, 1, null]).estimate).toBeGreaterThan(estimateOf([1, null, null]).estimate);
    expect(none.standardDeviation).toBeLessThan(1);
    expect(estimateOf([1, 0, 1])).toMatchObject({ answered: 3 });
  });

  it("mirrors when difficulties and answers are mirrored", () => {
    const mirrored = items.map(({ discrimination, difficulty }) => ({
      discrimination,
      difficulty: -difficulty,
    }));
    const found = expectedAbility([1, 0, 0], items);
    const turned = expectedAbility([0, 1, 1], mirrored);
    if (!found.ok || !turned.ok) throw new Error("expected two abilities");
    expect(turned.value.estimate).toBeCloseTo(-found.value.estimate, 12);
  });

  it("names what it lacks", () => {
    expect(expectedAbility([null, null, null], items)).toMatchObject({
      error: { code: "too_few_attempts", have: 0, need: 1 },
    });
    expect(expectedAbility([1], items)).toMatchObject({ error: { code: "invalid_input", path: "answers" } });
  });
});

describe("inverse of a positive definite matrix", () => {
  it("times the matrix is one; a matrix that is not positive definite has none", () => {
    const matrix = [
      [4, 1, -1],
      [1, 3, 0.5],
      [-1, 0.5, 2],
    ];
    const inverse = invertPositiveDefinite(matrix);
    if (inverse === null) throw new Error("expected an inverse");
    for (const [index, column] of inverse.entries()) {
      for (const [row, entry] of multiply(matrix, column).entries()) {
        expect(entry).toBeCloseTo(row === index ? 1 : 0, 12);
      }
    }
    expect(
      invertPositiveDefinite([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
  });
});
