import { meterFunctionSchema, readingSchema } from "@probeworthy/instruments";
import { z } from "zod";
import { commandSchema, reportSchema } from "./command";
import { observationSchema } from "./event";
import { instrumentNameSchema } from "./scenario";

/** Everything a learner's browser may know of an attempt. Strict: an extra key is an error, not a leak. */
export const learnerViewSchema = z.strictObject({
  status: z.enum(["open", "submitted"]),
  sequence: z.number().int().positive(),
  job: z.strictObject({
    title: z.string(),
    complaint: z.string(),
    vehicleTitle: z.string(),
    system: z.string(),
    systemTitle: z.string(),
  }),
  limits: z.strictObject({
    shopSeconds: z.number(),
    shopSecondsAllowed: z.number(),
    actions: z.number().int(),
    actionsAllowed: z.number().int(),
  }),
  instruments: z.array(instrumentNameSchema),
  requirePrediction: z.boolean(),
  conditions: z.array(
    z.discriminatedUnion("kind", [
      z.strictObject({
        kind: z.literal("choice"),
        name: z.string(),
        title: z.string(),
        group: z.string().optional(),
        value: z.string(),
        options: z.array(z.strictObject({ value: z.string(), title: z.string() })),
      }),
      z.strictObject({
        kind: z.literal("number"),
        name: z.string(),
        title: z.string(),
        group: z.string().optional(),
        unit: z.string(),
        value: z.number(),
        minimum: z.number(),
        maximum: z.number(),
        step: z.number(),
        /** False: shown only. A reason says why (key off, set by the weather). */
        adjustable: z.boolean(),
        reason: z.string().optional(),
      }),
    ]),
  ),
  bench: z.strictObject({
    unplugged: z.array(z.string()),
    pulledFuses: z.array(z.string()),
    red: z.string().nullable(),
    black: z.string().nullable(),
    function: meterFunctionSchema,
  }),
  noticed: z.array(z.strictObject({ id: z.string(), title: z.string(), text: z.string() })),
  /** Last reading taken; `current` while leads, function and car are still as they were. */
  slip: z
    .strictObject({ sequence: z.number().int(), reading: readingSchema, current: z.boolean() })
    .nullable(),
  points: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      owner: z.string(),
      conductor: z.string().optional(),
      accessible: z.boolean(),
      reason: z.string().optional(),
    }),
  ),
  connectors: z.array(z.strictObject({ id: z.string(), title: z.string(), place: z.string().optional() })),
  fuses: z.array(z.strictObject({ id: z.string(), title: z.string(), ratingAmps: z.number() })),
  modules: z.array(z.strictObject({ id: z.string(), title: z.string() })),
  /** Places a report may name. */
  places: z.array(z.strictObject({ id: z.string(), title: z.string(), group: z.string() })),
  log: z.array(
    z.strictObject({
      sequence: z.number().int(),
      elapsedSeconds: z.number(),
      command: z.union([z.strictObject({ type: z.literal("open") }), commandSchema]),
      observation: observationSchema,
    }),
  ),
  report: reportSchema.nullable(),
});
export type LearnerView = z.infer<typeof learnerViewSchema>;
