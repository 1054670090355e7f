import { describe, expect, it } from "vitest";
import { countPlaywright, countVitest, stepOutcome } from "./test-reports.mjs";

const file = (/** @type {string} */ status, /** @type {string[]} */ ...tests) => ({
  status,
  assertionResults: tests.map((one) => ({ status: one })),
});

describe("counts", () => {
  it("of vitest: every test that did not pass counts as failed", () => {
    const testResults = [file("passed", "passed", "passed"), file("failed", "passed", "failed", "skipped")];
    expect(countVitest({ testResults })).toEqual({ passed: 3, failed: 2 });
  });

  it("of vitest: a file that could not be collected is one failure", () => {
    expect(countVitest({ testResults: [file("failed"), file("passed", "passed")] })).toEqual({
      passed: 1,
      failed: 1,
    });
  });

  it("of playwright: only the expected passed", () => {
    const stats = { expected: 5, unexpected: 1, flaky: 1, skipped: 2 };
    expect(countPlaywright({ stats, errors: [] })).toEqual({ passed: 5, failed: 4 });
    const none = { expected: 0, unexpected: 0, flaky: 0, skipped: 0 };
    expect(countPlaywright({ stats: none, errors: [{}] })).toEqual({ passed: 0, failed: 1 });
  });

  it("of a step: a crash and an empty run are failures, a failed test is not counted twice", () => {
    expect(stepOutcome({ passed: 9, failed: 0 }, 0)).toEqual({ passed: 9, failed: 0 });
    expect(stepOutcome({ passed: 9, failed: 0 }, 1)).toEqual({ passed: 9, failed: 1 });
    expect(stepOutcome({ passed: 0, failed: 0 }, 0)).toEqual({ passed: 0, failed: 1 });
    expect(stepOutcome({ passed: 9, failed: 2 }, 1)).toEqual({ passed: 9, failed: 2 });
  });
});
