import { describe, expect, it } from "vitest";
import type { Expression } from "../document/expression";
import { worldReadings } from "../settle/world";
import { compileExpression, interpolate } from "./evaluate";

const value = (expression: Expression): number => compileExpression(expression)(worldReadings(() => 7));
const op = (name: Extract<Expression, { op: unknown }>["op"], ...args: Expression[]): number =>
  value({ op: name, args });

describe("expressions", () => {
  it("calculate with any number of arguments", () => {
    expect(op("add", 1, 2, 3)).toBe(6);
    expect(op("subtract", 10, 2, 3)).toBe(5);
    expect(op("multiply", 2, 3, 4)).toBe(24);
    expect(op("divide", 12, 3, 2)).toBe(2);
    expect([op("min", 3, 1, 2), op("max", 3, 1, 2)]).toEqual([1, 3]);
    expect([op("absolute", -2), op("negate", 2), op("sign", -9)]).toEqual([2, -2, -1]);
  });
  it("compare and join yes and no as 1 and 0", () => {
    expect([op("greater", 2, 1), op("less", 2, 1), op("atLeast", 2, 2), op("atMost", 3, 2)]).toEqual([
      1, 0, 1, 0,
    ]);
    expect([op("and", 1, 1, 0), op("or", 0, 0, 1), op("not", 0)]).toEqual([0, 1, 1]);
  });
  it("never divide to a NaN or an infinity", () => {
    expect([op("divide", 0, 0), op("divide", 5, 0)]).toEqual([0, 0]);
  });
  it("choose, and read the world", () => {
    expect(value({ if: { op: "greater", args: [{ condition: "x" }, 5] }, yes: 1, no: 2 })).toBe(1);
  });
  it("interpolate a table and hold its ends", () => {
    const table = [
      [0, 10],
      [10, 20],
      [20, 0],
    ] as const;
    expect([-5, 0, 5, 10, 15, 25].map((x) => interpolate(table, x))).toEqual([10, 10, 15, 20, 10, 0]);
  });
});
