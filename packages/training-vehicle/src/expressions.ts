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
export const filamentAmps = (designator: string, filament: "first" | "second"): Expression => ({
  loadAmps: designator,
  filament,
});
export const speedOf = (motor: string): Expression => ({ speedOf: motor });
export const torqueOf = (motor: string): Expression => ({ torqueOf: motor });
export const pulledIn = (relay: string): Expression => ({ pulledIn: relay });
export const negate = (a: Expression): Expression => ({ op: "negate", args: [a] });
export const least = (...args: Expression[]): Expression => ({ op: "min", args });
export const most = (...args: Expression[]): Expression => ({ op: "max", args });
/** 1 while a choice condition stands at this option, counted from 0 in the order of the document. */
export const chosen = (name: string, option: number): Expression =>
  and(greater(condition(name), option - 0.5), less(condition(name), option + 0.5));
