import type { Expression } from "@probeworthy/vehicle";

/** Short spellings, so that the control laws below read like the sentences they stand for. */
export const add = (...args: Expression[]): Expression => ({ op: "add", args });
export const subtract = (a: Expression, b: Expression): Expression => ({ op: "subtract", args: [a, b] });
export const multiply = (...args: Expression[]): Expression => ({ op: "multiply", args });
export const divide = (a: Expression, b: Expression): Expression => ({ op: "divide", args: [a, b] });
export const absolute = (a: Expression): Expression => ({ op: "absolute", args: [a] });
export const signOf = (a: Expression): Expression => ({ op: "sign", args: [a] });
export const greater = (a: Expression, b: Expression): Expression => ({ op: "greater", args: [a, b] });
export const less = (a: Expression, b: Expression): Expression => ({ op: "less", args: [a, b] });
export const atLeast = (a: Expression, b: Expression): Expression => ({ op: "atLeast", args: [a, b] });
export const atMost = (a: Expression, b: Expression): Expression => ({ op: "atMost", args: [a, b] });
export const and = (...args: Expression[]): Expression => ({ op: "and", args });
export const or = (...args: Expression[]): Expression => ({ op: "or", args });
export const not = (a: Expression): Expression => ({ op: "not", args: [a] });
export const choose = (condition: Expression, yes: Expression, no: Expression): Expression => ({
  if: condition,
  yes,
  no,
});
export const lookUp = (at: Expression, table: readonly (readonly [number, number])[]): Expression => ({
  table: table.map(([x, y]): [number, number] => [x, y]),
  at,
});
export const volts = (terminal: string): Expression => ({ volts: terminal });
export const message = (name: string): Expression => ({ message: name });
export const heard = (name: string): Expression => ({ heard: name });
export const failed = (code: string): Expression => ({ failed: code });
export const condition = (name: string): Expression => ({ condition: name });
export const loadAmps = (designator: string): Expression => ({ loadAmps: designator });
