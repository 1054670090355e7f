import { conditionValuesSchema, faultSchema } from "@probeworthy/vehicle";
import { z } from "zod";

/** Potentials and currents of one sheet at one instant. Strict: an extra key is an error, not a leak. */
export const potentialsSchema = z.strictObject({
  /** Volts against the body by point id, as far as the sheet shows them. */
  points: z.record(z.string(), z.number()),
  /** By conductor: volts at both ends and the current from the first to the second, A. */
  conductors: z.record(z.string(), z.strictObject({ from: z.number(), to: z.number(), amps: z.number() })),
  /** Top of the scale: the highest potential on the sheet, at least nominal, V. */
  supplyVolts: z.number(),
  noticed: z.array(z.strictObject({ id: z.string(), title: z.string(), text: z.string() })),
  /** Ids of what is out of the ordinary or about this sheet; the rest of the car is folded away. */
  noticedFirst: z.array(z.string()),
  /** What is unplugged and which fuses are out or open. */
  apart: z.strictObject({ unplugged: z.array(z.string()), pulledFuses: z.array(z.string()) }),
});
export type Potentials = z.infer<typeof potentialsSchema>;

/**
 * What is asked for. Of a vehicle: the conditions and faults to put in. Of an attempt: a line of its log, and the car is
 * what it was there.
 */
export const potentialsInputSchema = z.discriminatedUnion("of", [
  z.strictObject({
    of: z.literal("vehicle"),
    system: z.string().min(1).max(64),
    conditions: conditionValuesSchema,
    faults: z.array(faultSchema).max(3),
  }),
  z.strictObject({
    of: z.literal("attempt"),
    system: z.string().min(1).max(64),
    line: z.number().int().positive(),
  }),
]);
export type PotentialsInput = z.infer<typeof potentialsInputSchema>;
