import type { Expression, Operator } from "@probeworthy/vehicle";
import { comparisons, type ExpressionWords, nameFunctions, reservedWords } from "./expression-words";

/** How tightly a piece of text holds together; a looser one inside a tighter one goes into brackets. */
const level = { or: 1, and: 2, not: 3, comparison: 4, sum: 5, product: 6, unary: 7, whole: 8 } as const;

interface Written {
  readonly text: string;
  readonly level: number;
  /** The operator at the top, for chains. */
  readonly op?: Operator;
}

/** The formula as an author reads and writes it; `parseExpression` with the same words gives the same data back. */
export function formatExpression(expression: Expression, words: ExpressionWords): string {
  return write(expression, words).text;
}

const whole = (text: string): Written => ({ text, level: level.whole });

function write(expression: Expression, words: ExpressionWords): Written {
  if (typeof expression === "number") {
    return { text: String(expression), level: expression < 0 ? level.unary : level.whole };
  }
  if (typeof expression === "string") {
    const bare = words.bareName === "signal" && !reservedWords.includes(expression);
    return whole(bare ? expression : `signal(${expression})`);
  }
  if ("op" in expression) return writeOperation(expression.op, expression.args, words);
  if ("if" in expression) {
    const parts = [expression.if, expression.yes, expression.no].map((part) => write(part, words).text);
    return whole(`if(${parts.join(", ")})`);
  }
  if ("table" in expression) {
    const points = expression.table.map(([x, y]) => `${x}: ${y}`).join(", ");
    return whole(`table(${write(expression.at, words).text}, ${points})`);
  }
  if ("signal" in expression) return whole(`signal(${expression.of}, ${expression.signal})`);
  if ("loadAmps" in expression) {
    const { loadAmps, filament } = expression;
    return whole(`loadAmps(${filament === undefined ? loadAmps : `${loadAmps}, ${filament}`})`);
  }
  if ("condition" in expression && words.bareName === "condition") {
    const { condition } = expression;
    return whole(reservedWords.includes(condition) ? `condition(${condition})` : condition);
  }
  for (const name of nameFunctions) {
    const value = (expression as Readonly<Record<string, unknown>>)[name];
    if (value !== undefined) return whole(`${name}(${String(value)})`);
  }
  throw new Error(`an expression of an unknown form: ${JSON.stringify(expression)}`);
}

function writeOperation(op: Operator, args: readonly Expression[], words: ExpressionWords): Written {
  const equal = op === "and" ? asEqual(args) : undefined;
  if (equal !== undefined) return writeComparison("=", equal, words);
  const sign = Object.keys(comparisons).find((symbol) => comparisons[symbol] === op);
  const [first, second] = args;
  if (first !== undefined && second !== undefined) {
    if (sign !== undefined && args.length === 2) return writeComparison(sign, [first, second], words);
    if (op === "and" || op === "or") return chain(op, ` ${op} `, level[op], args, words);
    if (op === "add") return chain(op, " + ", level.sum, args, words);
    if (op === "multiply") return chain(op, " * ", level.product, args, words);
    if (args.length === 2 && (op === "subtract" || op === "divide")) {
      const own = op === "subtract" ? level.sum : level.product;
      const text = `${inside(write(first, words), own)} ${op === "subtract" ? "-" : "/"} ${inside(write(second, words), own + 1)}`;
      return { text, level: own, op };
    }
    if (op === "min" || op === "max") return call(op, args, words);
  }
  if (first !== undefined && args.length === 1) {
    if (op === "not") return { text: `not ${inside(write(first, words), level.not)}`, level: level.not };
    if (op === "absolute") return call("abs", args, words);
    if (op === "sign") return call("sign", args, words);
    if (op === "negate") {
      const isNumber = typeof first === "number" && first >= 0;
      const text = isNumber ? `-(${first})` : `-${inside(write(first, words), level.unary)}`;
      return { text, level: level.unary };
    }
  }
  // A number of values the operator has no sign for.
  return whole(`op(${[op, ...args.map((arg) => write(arg, words).text)].join(", ")})`);
}

const call = (name: string, args: readonly Expression[], words: ExpressionWords): Written =>
  whole(`${name}(${args.map((arg) => write(arg, words).text).join(", ")})`);

const inside = ({ text, level: own }: Written, least: number): string => (own < least ? `(${text})` : text);

/** `a + b + c`: one operation of many values. A first value that is such a chain itself stays apart by brackets. */
function chain(
  op: Operator,
  sign: string,
  own: number,
  args: readonly Expression[],
  words: ExpressionWords,
): Written {
  const texts = args.map((arg, position) => {
    const written = write(arg, words);
    if (position === 0 && written.op === op) return `(${written.text})`;
    return inside(written, position === 0 ? own : own + 1);
  });
  return { text: texts.join(sign), level: own, op };
}

function writeComparison(
  sign: string,
  [left, right]: readonly [Expression, Expression],
  words: ExpressionWords,
): Written {
  const options =
    typeof left === "object" && "condition" in left ? words.optionsOf?.(left.condition) : undefined;
  const option = sign === "=" && typeof right === "number" ? options?.[right] : undefined;
  const value = inside(write(right, words), level.sum);
  // After such a condition a bare name would be read as one of its options.
  const looksLikeOption = options !== undefined && /^[A-Za-z_]\w*(?![\w(])/.test(value);
  const rightText = option ?? (looksLikeOption ? `(${value})` : value);
  return { text: `${inside(write(left, words), level.sum)} ${sign} ${rightText}`, level: level.comparison };
}

/** "At least" and "at most" of the same two values: they are equal. */
function asEqual(args: readonly Expression[]): [Expression, Expression] | undefined {
  const [low, high] = args;
  if (args.length !== 2 || typeof low !== "object" || typeof high !== "object") return undefined;
  if (!("op" in low) || !("op" in high) || low.op !== "atLeast" || high.op !== "atMost") return undefined;
  const [left, right] = low.args;
  if (left === undefined || right === undefined || low.args.length !== 2) return undefined;
  return JSON.stringify(low.args) === JSON.stringify(high.args) ? [left, right] : undefined;
}
