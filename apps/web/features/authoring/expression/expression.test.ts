import { trainingVehicle } from "@probeworthy/training-vehicle";
import { type Expression, expressionSchema, operators } from "@probeworthy/vehicle";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ExpressionWords } from "./expression-words";
import { formatExpression } from "./format-expression";
import { parseExpression } from "./parse-expression";

const inModule: ExpressionWords = { bareName: "signal", optionsOf: () => undefined };
const inSensor: ExpressionWords = {
  bareName: "condition",
  optionsOf: (name) => (name === "key" ? ["off", "on", "start"] : undefined),
};

const names = fc.constantFrom("key", "effort", "and", "not", "volts", "a1");
const numbers = fc.oneof(
  fc.integer({ min: -50, max: 50 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);
const { expression } = fc.letrec<{ expression: Expression }>((tie) => ({
  expression: fc.oneof(
    { depthSize: "small", withCrossShrink: true },
    numbers.map((value) => (Object.is(value, -0) ? 0 : value)),
    names.filter((name) => name !== "volts"),
    fc.constantFrom<Expression>(
      { volts: "D+" },
      { volts: "-" },
      { condition: "key" },
      { condition: "roadSpeed" },
      { failed: "C1511-86" },
      { signal: "target", of: "A1" },
      { loadAmps: "E1" },
      { loadAmps: "E1", filament: "second" },
      { hertz: "T4" },
      { pulledIn: "K1" },
    ),
    fc.record({
      op: fc.constantFrom(...operators),
      args: fc.array(tie("expression"), { minLength: 1, maxLength: 3 }),
    }),
    fc.record({ if: tie("expression"), yes: tie("expression"), no: tie("expression") }),
    fc.record({
      table: fc.array(fc.tuple(fc.integer(), fc.integer()), { minLength: 2, maxLength: 3 }),
      at: tie("expression"),
    }),
    tie("expression").map(
      (value): Expression => ({
        op: "and",
        args: [
          { op: "atLeast", args: [{ condition: "key" }, value] },
          { op: "atMost", args: [{ condition: "key" }, value] },
        ],
      }),
    ),
  ),
}));

describe("a formula as text", () => {
  it.each([inModule, inSensor])(
    "reads back as the data it was written from, bare names a $bareName",
    (words) => {
      fc.assert(
        fc.property(expression, (data) => {
          const text = formatExpression(data, words);
          expect({ text, read: parseExpression(text, words) }).toEqual({
            text,
            read: { ok: true, value: data },
          });
        }),
        { numRuns: 400 },
      );
    },
  );

  it("every formula of the training vehicle comes out as it went in", () => {
    let count = 0;
    const walk = (value: unknown): void => {
      if (typeof value !== "object" || value === null) return;
      const isFormula = Object.keys(value).some((key) => ["op", "if", "volts", "condition"].includes(key));
      const parsed = isFormula ? expressionSchema.safeParse(value) : undefined;
      if (parsed?.success) {
        const read = parseExpression(formatExpression(parsed.data, inModule), inModule);
        expect(read).toEqual({ ok: true, value: parsed.data });
        count += 1;
        return;
      }
      for (const inner of Object.values(value)) walk(inner);
    };
    walk(trainingVehicle.components);
    expect(count).toBeGreaterThan(20);
  });

  it.each([
    ["volts(T1) > 2.5 and not engaged", "volts(T1) > 2.5 and not engaged"],
    ["1+2 -3", "1 + 2 - 3"],
    ["(a + b) * -c / 2", "(a + b) * -c / 2"],
    ["if(a>1,2,-(3))", "if(a > 1, 2, -(3))"],
    ["table( effort , -5:0,5: 1e3 )", "table(effort, -5: 0, 5: 1000)"],
  ])("%s is written %s", (text, tidy) => {
    const read = parseExpression(text, inModule);
    expect(read.ok && formatExpression(read.value, inModule)).toBe(tidy);
  });

  it("knows the options of a condition by name", () => {
    const read = parseExpression("key = start or roadSpeed > 5", inSensor);
    expect(read.ok && formatExpression(read.value, inSensor)).toBe("key = start or roadSpeed > 5");
    expect(JSON.stringify(read)).toContain('{"op":"atLeast","args":[{"condition":"key"},2]}');
  });

  it.each([
    ["", "the end stands where a value is wanted", 0],
    ["volts(T1) >", "the end stands where a value is wanted", 11],
    ["volts(T1", "the end stands where ) is wanted", 8],
    ["speed 3", "3 cannot stand here; is a sign missing before it?", 6],
    ["2.5V > 3", "write 2.5 without V: values stand in their own unit", 3],
    ["1 < a < 3", "compare two values at a time; join comparisons with and", 6],
    ["root(4)", "there is no function root", 0],
    ["volts > 3", "write volts(…) with what it is of in brackets", 0],
    ["if(a, 1)", "write if(question, value when yes, value when no)", 0],
    ["table(a, 1: 2)", "a table needs two points or more", 7],
  ])("refuses %j in words", (text, message, at) => {
    const read = parseExpression(text, inModule);
    expect(read).toMatchObject({ ok: false, error: { message: expect.stringContaining(message), at } });
  });

  it("names the options when there is no such one", () => {
    expect(parseExpression("key = run", inSensor)).toMatchObject({
      error: { message: "key has no option run; it has off, on, start" },
    });
  });
});
