import { z } from "zod";
import { camelNameSchema, designatorSchema, terminalNameSchema } from "./names";

/**
 * A control law as data. Numbers are in SI units except temperatures (°C), road speed (km/h) and
 * engine speed (1/min). Yes/no is 1/0. A bare string names an earlier signal of the same module.
 */
export type Expression =
  | number
  | string
  /** Voltage of an own terminal against the module's own ground node, V. */
  | { readonly volts: string }
  /** An operating condition as the world has it (only sensors and plant models may use it). */
  | { readonly condition: string }
  /** A value received over the bus; the receiver's substitute while the sender cannot be heard. */
  | { readonly message: string }
  /** 1 while that message is being received. */
  | { readonly heard: string }
  /** Measured current of an own output, A. */
  | { readonly amps: string }
  /** Own computed temperature (see `thermalEstimates`), °C. */
  | { readonly estimate: string }
  /** 1 while the monitor of that code is failed or latched. */
  | { readonly failed: string }
  /** A signal of another module; only symptoms may look across modules. 0 while that module is unpowered. */
  | { readonly signal: string; readonly of: string }
  /** Current through a motor, lamp or other two-terminal load, A; `filament` names one of a two-filament lamp. */
  | { readonly loadAmps: string; readonly filament?: "first" | "second" | undefined }
  /** Pulses counted at an own terminal, Hz; 0 while their swing is too small. */
  | { readonly hertz: string }
  /** Speed of a turning motor, rad/s; only symptoms and conditions of the world use it. */
  | { readonly speedOf: string }
  /** Torque of a motor at the output of its gear, N·m; 0 behind a broken coupling. */
  | { readonly torqueOf: string }
  /** 1 while that relay is pulled in. */
  | { readonly pulledIn: string }
  | { readonly op: Operator; readonly args: readonly Expression[] }
  | { readonly if: Expression; readonly yes: Expression; readonly no: Expression }
  /** Straight lines between points, held constant outside; points sorted by x. */
  | { readonly table: readonly (readonly [number, number])[]; readonly at: Expression };

export const operators = [
  "add",
  "subtract",
  "multiply",
  "divide",
  "min",
  "max",
  "absolute",
  "negate",
  "sign",
  "greater",
  "less",
  "atLeast",
  "atMost",
  "and",
  "or",
  "not",
] as const;
export type Operator = (typeof operators)[number];

export const expressionSchema: z.ZodType<Expression> = z.lazy(() =>
  z.union([
    z.number(),
    camelNameSchema,
    z.strictObject({ volts: terminalNameSchema }),
    z.strictObject({ condition: camelNameSchema }),
    z.strictObject({ message: camelNameSchema }),
    z.strictObject({ heard: camelNameSchema }),
    z.strictObject({ amps: camelNameSchema }),
    z.strictObject({ estimate: camelNameSchema }),
    z.strictObject({ failed: z.string() }),
    z.strictObject({ signal: camelNameSchema, of: designatorSchema }),
    z.strictObject({ loadAmps: designatorSchema, filament: z.enum(["first", "second"]).optional() }),
    z.strictObject({ hertz: terminalNameSchema }),
    z.strictObject({ speedOf: designatorSchema }),
    z.strictObject({ torqueOf: designatorSchema }),
    z.strictObject({ pulledIn: designatorSchema }),
    z.strictObject({ op: z.enum(operators), args: z.array(expressionSchema).min(1) }),
    z.strictObject({ if: expressionSchema, yes: expressionSchema, no: expressionSchema }),
    z.strictObject({
      table: z.array(z.tuple([z.number(), z.number()])).min(2),
      at: expressionSchema,
    }),
  ]),
);
