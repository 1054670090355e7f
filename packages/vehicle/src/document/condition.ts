import { z } from "zod";
import { camelNameSchema } from "./names";

/** Heading under which a control is offered, such as "Lights" or "Driving"; those without one come first. */
const groupSchema = z.string().min(1).optional();

/** An operating condition the technician can set: key position, engine speed, steering effort … */
export const conditionSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("choice"),
    name: camelNameSchema,
    title: z.string().min(1),
    options: z.array(z.strictObject({ value: camelNameSchema, title: z.string().min(1) })).min(2),
    initial: camelNameSchema,
    group: groupSchema,
  }),
  z.strictObject({
    kind: z.literal("number"),
    name: camelNameSchema,
    title: z.string().min(1),
    unit: z.string(),
    minimum: z.number(),
    maximum: z.number(),
    step: z.number().positive(),
    initial: z.number(),
    /** Set by the world, not by the technician (ambient temperature): shown, not offered as a control. */
    fixed: z.boolean().optional(),
    /** The value is forced to `minimum` unless this choice condition has one of these values (engine off → 0 1/min). */
    onlyWhen: z.strictObject({ condition: camelNameSchema, is: z.array(camelNameSchema).min(1) }).optional(),
    group: groupSchema,
  }),
]);
export type ConditionDefinition = z.infer<typeof conditionSchema>;

/** Values by condition name: the option of a choice, or a number in the definition's unit. */
export const conditionValuesSchema = z.record(camelNameSchema, z.union([z.string(), z.number()]));
export type ConditionValues = z.infer<typeof conditionValuesSchema>;
