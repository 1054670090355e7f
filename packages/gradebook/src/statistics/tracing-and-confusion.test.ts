import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { confusionMatrix, type DiagnosedAttempt } from "./confusion-matrix";
import { traceMastery, traceSkills } from "./mastery-tracing";

const usual = { initial: 0.3, learn: 0.15, slip: 0.1, guess: 0.2 };

describe("mastery tracing", () => {
  it("a right answer raises the posterior, a wrong one lowers it, learning never lowers", () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom<0 | 1>(0, 1), { minLength: 1, maxLength: 30 }), (answers) => {
        const found = traceMastery(answers, usual);
        if (!found.ok) throw new Error(found.error.code);
        let before = usual.initial;
        for (const [index, { posterior, mastery }] of found.value.entries()) {
          if (answers[index] === 1) expect(posterior).toBeGreaterThanOrEqual(before);
          else expect(posterior).toBeLessThanOrEqual(before);
          expect(mastery).toBeGreaterThanOrEqual(posterior);
          expect(mastery).toBeLessThanOrEqual(1);
          before = mastery;
        }
      }),
    );
  });

  it("keeps skills apart and in order", () => {
    const found = traceSkills(
      [
        { skill: "loaded drop", answer: 1 },
        { skill: "codes", answer: 0 },
        { skill: "loaded drop", answer: 0 },
      ],
      () => usual,
    );
    expect(found.get("loaded drop")).toEqual(traceMastery([1, 0], usual));
    expect(found.get("codes")).toEqual(traceMastery([0], usual));
  });

  it("names what it lacks", () => {
    expect(traceMastery([], usual)).toMatchObject({ error: { code: "too_few_attempts", have: 0, need: 1 } });
    expect(traceMastery([1], { ...usual, learn: 1.2 })).toMatchObject({ error: { path: "learn" } });
    expect(traceMastery([1], { ...usual, slip: 0.8 })).toMatchObject({ error: { path: "slip" } });
    expect(traceMastery([0, 1], { initial: 0, learn: 0, slip: 0, guess: 0 })).toMatchObject({
      error: { code: "invalid_input", path: "answers.1" },
    });
  });
});

const one = (kind: string, ...named: string[]): DiagnosedAttempt => ({
  faults: [{ kind, rightNames: [kind] }],
  named,
});

describe("confusion matrix", () => {
  it("counts the true kind against the named one, and nothing wrong as a kind of its own", () => {
    const found = confusionMatrix([
      ...new Array(4).fill(one("open", "open")),
      ...new Array(3).fill(one("open", "highResistance")),
      one("highResistance", "highResistance"),
      one("highResistance"),
      { faults: [], named: ["open"] },
    ]);
    expect(found.kinds).toEqual(["nothingWrong", "highResistance", "open"]);
    expect(found.rows.map(({ counts }) => counts)).toEqual([
      [0, 0, 1],
      [1, 1, 0],
      [0, 3, 4],
    ]);
    expect(found.rows[2]).toMatchObject({
      attempts: 7,
      right: { value: { successes: 4, attempts: 7 } },
      takenFor: { kind: "highResistance", attempts: 3 },
    });
    expect(found.rows[1]?.right).toEqual({
      ok: false,
      error: { code: "too_few_attempts", have: 2, need: 5 },
    });
    expect(found.agreement).toMatchObject({ error: { code: "too_few_attempts", have: 10, need: 18 } });
  });

  it("any right name stands under the true kind", () => {
    const found = confusionMatrix([
      { faults: [{ kind: "open", rightNames: ["open", "highResistance"] }], named: ["highResistance"] },
    ]);
    expect(found.kinds).toEqual(["open"]);
    expect(found.rows[0]).toMatchObject({ counts: [1], takenFor: null });
  });

  it("attempts with several faults or several names are counted apart, a name said twice is one name", () => {
    const found = confusionMatrix([
      { faults: [...one("open").faults, ...one("shortToGround").faults], named: ["open"] },
      one("open", "open", "shortToGround"),
      one("open", "open", "open"),
    ]);
    expect(found).toMatchObject({ attempts: 1, severalFaults: 1, severalNamed: 1 });
  });

  it("loses no attempt, whatever was named", () => {
    const word = fc.constantFrom("open", "highResistance", "shortToGround");
    const attempt = fc.record({
      faults: fc.array(fc.record({ kind: word, rightNames: fc.array(word, { maxLength: 2 }) }), {
        maxLength: 2,
      }),
      named: fc.array(word, { maxLength: 2 }),
    });
    fc.assert(
      fc.property(fc.array(attempt, { maxLength: 30 }), (attempts) => {
        const found = confusionMatrix(attempts);
        const inTable = found.rows.flatMap(({ counts }) => counts).reduce((all, count) => all + count, 0);
        expect(inTable).toBe(found.attempts);
        expect(found.attempts + found.severalFaults + found.severalNamed).toBe(attempts.length);
      }),
    );
  });

  it("an empty class gives an empty table", () => {
    expect(confusionMatrix([])).toMatchObject({ kinds: [], rows: [], attempts: 0 });
  });
});
