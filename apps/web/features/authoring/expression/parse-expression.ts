import type { Expression, Operator } from "@probeworthy/vehicle";
import { operators } from "@probeworthy/vehicle";
import {
  comparisons,
  type ExpressionWords,
  type NameFunction,
  nameFunctions,
  valueFunctions,
} from "./expression-words";

export type ParsedExpression =
  | { readonly ok: true; readonly value: Expression }
  | { readonly ok: false; readonly error: { readonly at: number; readonly message: string } };

class NotReadable extends Error {
  constructor(
    readonly at: number,
    message: string,
  ) {
    super(message);
  }
}

/**
 * Reads a formula such as `volts(T1) > 2.5 and condition(key) = on`. Signs by how tightly they hold: `* /`, `+ -`,
 * `> < >= <= =`, `not`, `and`, `or`. Errors say what stands where something else was wanted; `at` counts characters from 0.
 */
export function parseExpression(text: string, words: ExpressionWords): ParsedExpression {
  const reader = new Reader(text, words);
  try {
    const value = reader.or();
    reader.end();
    return { ok: true, value };
  } catch (error) {
    if (!(error instanceof NotReadable)) throw error;
    return { ok: false, error: { at: error.at, message: error.message } };
  }
}

const word = /[A-Za-z_][A-Za-z0-9_]*/y;
const number = /(\d+(\.\d*)?|\.\d+)([eE][+-]?\d+)?/y;
const rawName = /[^,()\s][^,()]*/y;

class Reader {
  private at = 0;

  constructor(
    private readonly text: string,
    private readonly words: ExpressionWords,
  ) {}

  or(): Expression {
    return this.logic("or", () => this.logic("and", () => this.not()));
  }

  end(): void {
    this.space();
    if (this.at < this.text.length)
      this.fail(`${this.found()} cannot stand here; is a sign missing before it?`);
  }

  private logic(op: "and" | "or", next: () => Expression): Expression {
    const args = [next()];
    while (this.takeWord(op)) args.push(next());
    const [only] = args;
    return args.length === 1 && only !== undefined ? only : { op, args };
  }

  private not(): Expression {
    return this.takeWord("not") ? { op: "not", args: [this.not()] } : this.comparison();
  }

  private comparison(): Expression {
    const left = this.sum();
    const sign = this.take(">=", "<=", ">", "<", "=");
    if (sign === undefined) return left;
    const right = this.optionOf(left) ?? this.sum();
    const again = this.at;
    if (this.take(">=", "<=", ">", "<", "=") !== undefined)
      this.fail("compare two values at a time; join comparisons with and", again);
    const op = comparisons[sign];
    if (op !== undefined) return { op, args: [left, right] };
    return {
      op: "and",
      args: [
        { op: "atLeast", args: [left, right] },
        { op: "atMost", args: [left, right] },
      ],
    };
  }

  /** `key = start`: the name of an option after its condition stands for its place in the list. */
  private optionOf(left: Expression): number | undefined {
    if (typeof left !== "object" || !("condition" in left)) return undefined;
    const options = this.words.optionsOf?.(left.condition);
    const name = this.peekWord();
    if (options === undefined || name === undefined || this.text[this.at + name.length] === "(")
      return undefined;
    const position = options.indexOf(name);
    if (position === -1) this.fail(`${left.condition} has no option ${name}; it has ${options.join(", ")}`);
    this.at += name.length;
    return position;
  }

  private sum(): Expression {
    return this.chain({ "+": "add", "-": "subtract" }, () => this.product());
  }

  private product(): Expression {
    return this.chain({ "*": "multiply", "/": "divide" }, () => this.unary());
  }

  /** Left to right; several additions (or multiplications) in a row become one operation. */
  private chain(signs: Readonly<Record<string, Operator>>, next: () => Expression): Expression {
    let left = next();
    let row: Expression[] | undefined;
    for (;;) {
      const sign = this.take(...Object.keys(signs));
      const op = sign === undefined ? undefined : signs[sign];
      if (op === undefined) return left;
      const right = next();
      const gathers = op === "add" || op === "multiply";
      if (gathers && row !== undefined) row.push(right);
      else {
        const args = [left, right];
        left = { op, args };
        row = gathers ? args : undefined;
      }
    }
  }

  private unary(): Expression {
    if (this.take("-") === undefined) return this.primary();
    const literal = this.takeNumber();
    return literal === undefined ? { op: "negate", args: [this.unary()] } : -literal;
  }

  private primary(): Expression {
    const literal = this.takeNumber();
    if (literal !== undefined) return literal;
    if (this.take("(") !== undefined) {
      const inner = this.or();
      this.want(")");
      return inner;
    }
    const start = this.at;
    const name = this.peekWord();
    if (name === undefined) this.fail(`${this.found()} stands where a value is wanted`);
    this.at += name.length;
    if (this.take("(") === undefined) return this.bare(name, start);
    const value = this.callOf(name, start);
    this.want(")");
    return value;
  }

  private bare(name: string, start: number): Expression {
    if (["and", "or", "not"].includes(name)) this.fail(`a value is wanted before ${name}`, start);
    if (nameFunctions.includes(name as NameFunction) || valueFunctions[name] !== undefined)
      this.fail(`write ${name}(…) with what it is of in brackets`, start);
    return this.words.bareName === "signal" ? name : { condition: name };
  }

  private callOf(name: string, start: number): Expression {
    if (nameFunctions.includes(name as NameFunction)) {
      // The property is one of those an expression may have: the list above names nothing else.
      return { [name as "volts"]: this.raw(`the name that ${name} is of`) } as Expression;
    }
    const op = valueFunctions[name];
    if (op !== undefined) {
      const args = this.list();
      const single = op === "absolute" || op === "sign";
      if (single && args.length > 1) this.fail(`${name} takes one value`, start);
      if (!single && args.length < 2) this.fail(`${name} takes two values or more`, start);
      return { op, args };
    }
    switch (name) {
      case "if":
        return this.choice(start);
      case "table":
        return this.table();
      case "signal": {
        const first = this.raw("the name of a signal");
        return this.take(",") === undefined ? first : { signal: this.raw("the name of a signal"), of: first };
      }
      case "loadAmps": {
        const load = this.raw("a designator");
        if (this.take(",") === undefined) return { loadAmps: load };
        const at = this.at;
        const filament = this.raw("first or second");
        if (filament !== "first" && filament !== "second") this.fail("the filament is first or second", at);
        return { loadAmps: load, filament };
      }
      case "op": {
        const at = this.at;
        const operator = operators.find((known) => known === this.peekWord());
        if (operator === undefined) return this.fail(`an operator is one of ${operators.join(", ")}`, at);
        this.at += operator.length;
        this.want(",");
        return { op: operator, args: this.list() };
      }
      default:
        return this.fail(
          `there is no function ${name}; there are ${[...nameFunctions, "signal", "loadAmps", ...Object.keys(valueFunctions), "if", "table"].join(", ")}`,
          start,
        );
    }
  }

  private choice(start: number): Expression {
    const [test, yes, no, ...more] = this.list();
    if (test === undefined || yes === undefined || no === undefined || more.length > 0)
      return this.fail("write if(question, value when yes, value when no)", start);
    return { if: test, yes, no };
  }

  private table(): Expression {
    const at = this.or();
    const points: [number, number][] = [];
    const start = this.at;
    while (this.take(",") !== undefined) {
      const x = this.signedNumber();
      this.want(":");
      points.push([x, this.signedNumber()]);
    }
    if (points.length < 2) this.fail("a table needs two points or more, as in table(x, 0: 1, 10: 5)", start);
    return { table: points, at };
  }

  private list(): Expression[] {
    const args = [this.or()];
    while (this.take(",") !== undefined) args.push(this.or());
    return args;
  }

  private signedNumber(): number {
    const minus = this.take("-") !== undefined;
    const value = this.takeNumber();
    if (value === undefined) return this.fail(`${this.found()} stands where a number is wanted`);
    return minus ? -value : value;
  }

  private takeNumber(): number | undefined {
    this.space();
    number.lastIndex = this.at;
    const found = number.exec(this.text);
    if (found === null) return undefined;
    this.at += found[0].length;
    const unit = this.peekWordHere();
    if (unit !== undefined) this.fail(`write ${found[0]} without ${unit}: values stand in their own unit`);
    return Number(found[0]);
  }

  private raw(what: string): string {
    this.space();
    rawName.lastIndex = this.at;
    const found = rawName.exec(this.text);
    if (found === null) return this.fail(`${this.found()} stands where ${what} is wanted`);
    this.at += found[0].length;
    return found[0].trim();
  }

  private peekWord(): string | undefined {
    this.space();
    return this.peekWordHere();
  }

  private peekWordHere(): string | undefined {
    word.lastIndex = this.at;
    return word.exec(this.text)?.[0];
  }

  private takeWord(wanted: string): boolean {
    if (this.peekWord() !== wanted) return false;
    this.at += wanted.length;
    return true;
  }

  private take(...signs: readonly string[]): string | undefined {
    this.space();
    const sign = signs.find((candidate) => this.text.startsWith(candidate, this.at));
    if (sign !== undefined) this.at += sign.length;
    return sign;
  }

  private want(sign: string): void {
    if (this.take(sign) === undefined) this.fail(`${this.found()} stands where ${sign} is wanted`);
  }

  private space(): void {
    while (/\s/.test(this.text[this.at] ?? "")) this.at += 1;
  }

  private found(): string {
    this.space();
    if (this.at >= this.text.length) return "the end";
    return this.peekWordHere() ?? (this.text[this.at] as string);
  }

  private fail(message: string, at = this.at): never {
    throw new NotReadable(at, message);
  }
}
