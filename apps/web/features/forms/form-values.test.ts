import { describe, expect, it } from "vitest";
import { emptyAsNull, toInstant } from "./form-values";

describe("what people type into a number field", () => {
  it.each([
    ["", null],
    ["  ", null],
    ["70", 70],
    ["0,25", 0.25],
    ["1e-3", 0.001],
    ["seventy", "seventy"],
    [Number.NaN, null],
    [null, null],
  ])("%j becomes %j", (typed, value) => {
    expect(emptyAsNull(typed)).toBe(value);
  });
});

describe("a wall clock", () => {
  it("becomes a moment with zone, and nothing when it is none", () => {
    expect(toInstant("2027-03-01T08:00")).toBe(new Date(2027, 2, 1, 8, 0).toISOString());
    expect(toInstant("")).toBeNull();
    expect(toInstant("tomorrow")).toBeNull();
  });
});
