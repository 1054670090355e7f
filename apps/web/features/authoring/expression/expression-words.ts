import type { Operator } from "@probeworthy/vehicle";

/** What a formula's surroundings decide about its words. */
export interface ExpressionWords {
  /** What a bare name means: an earlier signal of the same module, or a condition where there are no signals. */
  readonly bareName: "signal" | "condition";
  /** The options of a choice condition, in order; undefined when it has none. */
  readonly optionsOf?: (condition: string) => readonly string[] | undefined;
}

/** Functions of one name: how they are written, and the property that holds the name in the document. */
export const nameFunctions = [
  "volts",
  "condition",
  "message",
  "heard",
  "amps",
  "estimate",
  "failed",
  "hertz",
  "speedOf",
  "torqueOf",
  "pulledIn",
] as const;
export type NameFunction = (typeof nameFunctions)[number];

/** Functions of values, and the operator each stands for. */
export const valueFunctions: Readonly<Record<string, Operator>> = {
  min: "min",
  max: "max",
  abs: "absolute",
  sign: "sign",
};

export const comparisons: Readonly<Record<string, Operator>> = {
  ">": "greater",
  "<": "less",
  ">=": "atLeast",
  "<=": "atMost",
};

export const reservedWords: readonly string[] = ["and", "or", "not"];
