import { z } from "zod";

/** Functions of the multimeter. `amps` uses the fused 10 A input, the others the volt–ohm input. */
export const meterFunctions = ["volts", "ohms", "continuity", "amps"] as const;
export const meterFunctionSchema = z.enum(meterFunctions);
export type MeterFunction = z.infer<typeof meterFunctionSchema>;

export const readingUnits = ["V", "mV", "Ω", "kΩ", "MΩ", "A", "mA"] as const;

/**
 * What the display shows. `value` is the number as displayed, in the base unit (V, Ω, A), after rounding to the
 * display's counts; null when there is no figure (`OL`, open input fuse, a lead in the air).
 */
export const readingSchema = z.strictObject({
  function: meterFunctionSchema,
  display: z.string(), // "12.63", "-0.004", "OL"
  unit: z.enum(readingUnits),
  value: z.number().nullable(),
  state: z.enum(["value", "overload", "fuse_open", "lead_open"]),
  /** One count of the display in the base unit. */
  resolution: z.number().positive(),
  range: z.string(), // "60 V"
  sounds: z.boolean(), // continuity tone
});
export type Reading = z.infer<typeof readingSchema>;
