import type { Expression, Operator } from "../document/expression";

/** Where an expression gets its numbers from. Every answer is a finite number. */
export interface Readings {
  volts(terminal: string): number;
  condition(name: string): number;
  message(name: string): number;
  heard(name: string): number;
  amps(output: string): number;
  estimate(name: string): number;
  failed(code: string): number;
  own(signal: string): number;
  signal(name: string, of: string): number;
  loadAmps(id: string, filament?: "first" | "second"): number;
  hertz(terminal: string): number;
  speedOf(id: string): number;
  torqueOf(id: string): number;
  pulledIn(id: string): number;
}

export type Evaluate = (readings: Readings) => number;

const truth = (value: boolean): number => (value ? 1 : 0);
const isTrue = (value: number): boolean => value > 0.5;

/** Compiles an expression once, so that a settle walks closures instead of data. */
export function compileExpression(expression: Expression): Evaluate {
  if (typeof expression === "number") return () => expression;
  if (typeof expression === "string") return (readings) => readings.own(expression);
  if ("op" in expression) return compileOperation(expression.op, expression.args.map(compileExpression));
  if ("if" in expression) {
    const test = compileExpression(expression.if);
    const yes = compileExpression(expression.yes);
    const no = compileExpression(expression.no);
    return (readings) => (isTrue(test(readings)) ? yes(readings) : no(readings));
  }
  if ("table" in expression) {
    const at = compileExpression(expression.at);
    const { table } = expression;
    return (readings) => interpolate(table, at(readings));
  }
  if ("signal" in expression) return (readings) => readings.signal(expression.signal, expression.of);
  if ("volts" in expression) return (readings) => readings.volts(expression.volts);
  if ("condition" in expression) return (readings) => readings.condition(expression.condition);
  if ("message" in expression) return (readings) => readings.message(expression.message);
  if ("heard" in expression) return (readings) => readings.heard(expression.heard);
  if ("amps" in expression) return (readings) => readings.amps(expression.amps);
  if ("estimate" in expression) return (readings) => readings.estimate(expression.estimate);
  if ("failed" in expression) return (readings) => readings.failed(expression.failed);
  if ("loadAmps" in expression)
    return (readings) => readings.loadAmps(expression.loadAmps, expression.filament);
  if ("hertz" in expression) return (readings) => readings.hertz(expression.hertz);
  if ("speedOf" in expression) return (readings) => readings.speedOf(expression.speedOf);
  if ("torqueOf" in expression) return (readings) => readings.torqueOf(expression.torqueOf);
  return (readings) => readings.pulledIn(expression.pulledIn);
}

/** Straight lines between points sorted by x, held constant outside. */
export function interpolate(table: readonly (readonly [number, number])[], x: number): number {
  const above = table.findIndex(([point]) => point >= x);
  if (above === -1) return table.at(-1)?.[1] ?? 0;
  const [x2, y2] = table[above] ?? [0, 0];
  const low = table[above - 1];
  if (!low || x2 === low[0]) return y2;
  return low[1] + ((y2 - low[1]) * (x - low[0])) / (x2 - low[0]);
}

/** A quotient by zero is 0: a control law must never hand a NaN to the circuit. */
const divide = (dividend: number, divisor: number): number => (divisor === 0 ? 0 : dividend / divisor);

function compileOperation(operator: Operator, args: readonly Evaluate[]): Evaluate {
  const fold =
    (combine: (left: number, right: number) => number): Evaluate =>
    (readings) =>
      args.slice(1).reduce((sum, next) => combine(sum, next(readings)), args[0]?.(readings) ?? 0);
  const single =
    (of: (value: number) => number): Evaluate =>
    (readings) =>
      of(args[0]?.(readings) ?? 0);
  switch (operator) {
    case "add":
      return fold((left, right) => left + right);
    case "subtract":
      return fold((left, right) => left - right);
    case "multiply":
      return fold((left, right) => left * right);
    case "divide":
      return fold(divide);
    case "min":
      return fold(Math.min);
    case "max":
      return fold(Math.max);
    case "absolute":
      return single(Math.abs);
    case "negate":
      return single((value) => -value);
    case "sign":
      return single(Math.sign);
    case "greater":
      return fold((left, right) => truth(left > right));
    case "less":
      return fold((left, right) => truth(left < right));
    case "atLeast":
      return fold((left, right) => truth(left >= right));
    case "atMost":
      return fold((left, right) => truth(left <= right));
    case "and":
      return (readings) => truth(args.every((arg) => isTrue(arg(readings))));
    case "or":
      return (readings) => truth(args.some((arg) => isTrue(arg(readings))));
    case "not":
      return single((value) => truth(!isTrue(value)));
  }
}
