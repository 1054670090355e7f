import { describe, expect, it } from "vitest";
import { rubricPresetNames, rubricPresets } from "./rubric-presets";
import { rubricLines, weightsSchema } from "./scenario";

describe("presets of the rubric", () => {
  it.each(rubricPresetNames)("%s: weights that sum to 100 and a pass mark within reach", (name) => {
    const { weights, passMark } = rubricPresets[name];
    expect(weightsSchema.safeParse(weights).success).toBe(true);
    expect(rubricLines.reduce((sum, line) => sum + weights[line], 0)).toBe(100);
    expect(passMark).toBeGreaterThan(50);
  });

  it.each(rubricPresetNames)("%s: a cause that is only guessed cannot pass", (name) => {
    const { weights, passMark } = rubricPresets[name];
    // A guess keeps a quarter of the cause, and at most all of efficiency and report; nothing was measured.
    expect(weights.cause / 4 + weights.efficiency + weights.report).toBeLessThan(passMark);
  });
});
