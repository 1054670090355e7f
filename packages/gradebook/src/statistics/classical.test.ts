import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { completeRows } from "./answers";
import { itemDifficulty, itemDiscriminations } from "./item-analysis";
import { jointTable } from "./joint-table";
import { cohenKappa } from "./kappa";
import { variance } from "./moments";
import { proportion } from "./proportion";
import { reliability } from "./reliability";

const table = fc.integer({ min: 2, max: 6 }).chain((items) =>
  fc.array(fc.array(fc.constantFrom<0 | 1>(0, 1), { minLength: items, maxLength: items }), {
    minLength: 10,
    maxLength: 40,
  }),
);

describe("proportion", () => {
  it("keeps the share inside an interval inside 0 … 1, and swaps ends when right and wrong are swapped", () => {
    fc.assert(
      fc.property(fc.nat(300), fc.nat(300), (right, wrong) => {
        fc.pre(right + wrong > 0);
        const found = proportion(right, right + wrong);
        const mirrored = proportion(wrong, right + wrong);
        if (!found.ok || !mirrored.ok) throw new Error("expected two intervals");
        const { share, interval } = found.value;
        expect(interval.low).toBeGreaterThanOrEqual(0);
        expect(interval.high).toBeLessThanOrEqual(1);
        expect(share).toBeGreaterThanOrEqual(interval.low);
        expect(share).toBeLessThanOrEqual(interval.high);
        expect(mirrored.value.interval.low).toBeCloseTo(1 - interval.high, 12);
      }),
    );
  });

  it("says what is wrong with its arguments", () => {
    expect(proportion(0, 0)).toEqual({ ok: false, error: { code: "too_few_attempts", have: 0, need: 1 } });
    expect(proportion(3, 2)).toMatchObject({ error: { code: "invalid_input", path: "successes" } });
    expect(proportion(0.5, 2)).toMatchObject({ error: { code: "invalid_input", path: "successes" } });
    expect(proportion(1, Number.NaN)).toMatchObject({ error: { code: "invalid_input", path: "attempts" } });
  });
});

describe("item analysis", () => {
  it("does not count what was not attempted", () => {
    expect(itemDifficulty([1, null, 0, 1, null, 1, 1])).toMatchObject({
      value: { successes: 4, attempts: 5, share: 0.8 },
    });
    expect(itemDifficulty([1, 1, null, 1, 1])).toEqual({
      ok: false,
      error: { code: "too_few_attempts", have: 4, need: 5 },
    });
  });

  it("leaves out rows with gaps and counts them", () => {
    expect(
      completeRows([
        [1, 0],
        [null, 1],
        [0, 0],
      ]),
    ).toEqual({
      rows: [
        [1, 0],
        [0, 0],
      ],
      leftOut: 1,
    });
  });

  it("an item few have tried does not shrink the table of the others", () => {
    const table = [
      [1, 0, null],
      [0, 1, 1],
      [1, 1, null],
      [null, 1, null],
    ] as const;
    expect(jointTable(table, 3)).toEqual({
      items: [0, 1],
      rows: [
        [1, 0],
        [0, 1],
        [1, 1],
      ],
      leftOut: 1,
    });
    expect(jointTable(table, 4)).toEqual({ items: [0, 1, 2], rows: [[0, 1, 1]], leftOut: 3 });
    expect(jointTable([], 4)).toEqual({ items: [], rows: [], leftOut: 0 });
  });

  it("an item everybody got right has no discrimination, the others keep theirs", () => {
    const rows = Array.from({ length: 10 }, (_, row) => [1, row % 2, row % 2]);
    const found = itemDiscriminations(rows);
    if (!found.ok) throw new Error("expected three answers");
    expect(found.value[0]).toEqual({ ok: false, error: { code: "no_spread", item: 0 } });
    expect(found.value[1]).toMatchObject({ value: { corrected: { r: 1, interval: { low: 1, high: 1 } } } });
  });

  it("the uncorrected correlation is never below the corrected one, and each lies in its interval", () => {
    fc.assert(
      fc.property(table, (rows) => {
        const found = itemDiscriminations(rows);
        if (!found.ok) throw new Error(found.error.code);
        for (const one of found.value) {
          if (!one.ok) continue;
          const { corrected, uncorrected } = one.value;
          expect(uncorrected.r).toBeGreaterThanOrEqual(corrected.r - 1e-12);
          expect(corrected.r).toBeGreaterThanOrEqual(corrected.interval.low - 1e-12);
          expect(corrected.r).toBeLessThanOrEqual(corrected.interval.high + 1e-12);
        }
      }),
    );
  });
});

describe("reliability", () => {
  it("alpha equals KR-20 for right and wrong, whichever divisor; only the error of measurement follows it", () => {
    fc.assert(
      fc.property(table, (rows) => {
        const these = reliability(rows, "attempts");
        const sample = reliability(rows, "attemptsLessOne");
        if (!these.ok || !sample.ok) {
          expect(these).toEqual({ ok: false, error: { code: "no_spread" } });
          expect(sample).toEqual(these);
          return;
        }
        expect(these.value.kr20).toBeCloseTo(these.value.alpha, 9);
        expect(sample.value.kr20).toBeCloseTo(these.value.alpha, 9);
        expect(sample.value.alpha).toBeCloseTo(these.value.alpha, 9);
        const ratio = Math.sqrt(rows.length / (rows.length - 1));
        expect(sample.value.standardError).toBeCloseTo(these.value.standardError * ratio, 9);
        expect(these.value.interval.low).toBeLessThanOrEqual(these.value.alpha);
        expect(these.value.interval.high).toBeGreaterThanOrEqual(these.value.alpha);
      }),
    );
  });

  it("is one for items that all agree, and has no KR-20 where an item can be partly right", () => {
    const rows = Array.from({ length: 12 }, (_, row) => [row / 11, row / 11, row / 11]);
    expect(reliability(rows, "attempts")).toMatchObject({ value: { kr20: null, attempts: 12, items: 3 } });
    const found = reliability(rows, "attempts");
    expect(found.ok && found.value.alpha).toBeCloseTo(1, 9);
    expect(found.ok && found.value.standardError).toBeCloseTo(0, 6);
  });

  it("names what it lacks", () => {
    const nine = Array.from({ length: 9 }, (_, row) => [row % 2, 1]);
    expect(reliability(nine, "attempts")).toMatchObject({
      error: { code: "too_few_attempts", have: 9, need: 10 },
    });
    expect(reliability([], "attempts")).toMatchObject({ error: { code: "too_few_attempts", have: 0 } });
    const single = Array.from({ length: 10 }, (_, row) => [row % 2]);
    expect(reliability(single, "attempts")).toMatchObject({ error: { code: "too_few_items", have: 1 } });
    expect(reliability([...nine, [1]], "attempts")).toMatchObject({
      error: { code: "invalid_input", path: "9" },
    });
    expect(reliability([...nine, [1, 1.5]], "attempts")).toMatchObject({
      error: { code: "invalid_input", path: "9.1" },
    });
  });

  it("a variance says what it is divided by", () => {
    expect(variance([1, 3], "attempts")).toBe(1);
    expect(variance([1, 3], "attemptsLessOne")).toBe(2);
  });
});

describe("kappa", () => {
  it("is one for full agreement, zero where chance explains it, and does not care who is first", () => {
    expect(
      cohenKappa([
        [6, 0],
        [0, 4],
      ]),
    ).toMatchObject({ value: { kappa: 1, standardError: 0 } });
    expect(
      cohenKappa([
        [4, 4],
        [4, 4],
      ]),
    ).toMatchObject({ value: { kappa: 0 } });
    const found = cohenKappa([
      [9, 2, 1],
      [3, 8, 0],
      [1, 1, 5],
    ]);
    const turned = cohenKappa([
      [9, 3, 1],
      [2, 8, 1],
      [1, 0, 5],
    ]);
    if (!found.ok || !turned.ok) throw new Error("expected two values");
    expect(turned.value.kappa).toBeCloseTo(found.value.kappa, 12);
    expect(turned.value.standardError).toBeCloseTo(found.value.standardError, 12);
  });

  it("names what it lacks", () => {
    expect(
      cohenKappa([
        [3, 1],
        [1, 2],
      ]),
    ).toMatchObject({ error: { code: "too_few_attempts", have: 7, need: 8 } });
    expect(
      cohenKappa([
        [9, 0],
        [0, 0],
      ]),
    ).toMatchObject({ error: { code: "no_spread" } });
    expect(cohenKappa([[1, 2]])).toMatchObject({ error: { code: "invalid_input", path: "0" } });
  });
});
