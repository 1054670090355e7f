import type { Expression } from "./expression";

/** Every name an expression uses, by what kind of thing it names. */
export type ExpressionReference =
  | { readonly kind: "ownSignal"; readonly name: string }
  | { readonly kind: "volts" | "condition" | "message" | "heard" | "amps" | "hertz"; readonly name: string }
  | {
      readonly kind: "estimate" | "failed" | "loadAmps" | "speedOf" | "torqueOf" | "pulledIn";
      readonly name: string;
    }
  | { readonly kind: "signal"; readonly name: string; readonly of: string };

/** Lists the names an expression uses, depth first, in writing order. */
export function expressionReferences(expression: Expression): ExpressionReference[] {
  if (typeof expression === "number") return [];
  if (typeof expression === "string") return [{ kind: "ownSignal", name: expression }];
  if ("op" in expression) return expression.args.flatMap(expressionReferences);
  if ("if" in expression) return [expression.if, expression.yes, expression.no].flatMap(expressionReferences);
  if ("table" in expression) return expressionReferences(expression.at);
  if ("signal" in expression) return [{ kind: "signal", name: expression.signal, of: expression.of }];
  if ("volts" in expression) return [{ kind: "volts", name: expression.volts }];
  if ("condition" in expression) return [{ kind: "condition", name: expression.condition }];
  if ("message" in expression) return [{ kind: "message", name: expression.message }];
  if ("heard" in expression) return [{ kind: "heard", name: expression.heard }];
  if ("amps" in expression) return [{ kind: "amps", name: expression.amps }];
  if ("estimate" in expression) return [{ kind: "estimate", name: expression.estimate }];
  if ("failed" in expression) return [{ kind: "failed", name: expression.failed }];
  if ("hertz" in expression) return [{ kind: "hertz", name: expression.hertz }];
  if ("speedOf" in expression) return [{ kind: "speedOf", name: expression.speedOf }];
  if ("torqueOf" in expression) return [{ kind: "torqueOf", name: expression.torqueOf }];
  if ("pulledIn" in expression) return [{ kind: "pulledIn", name: expression.pulledIn }];
  return [{ kind: "loadAmps", name: expression.loadAmps }];
}
