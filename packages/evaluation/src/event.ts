import { readingSchema } from "@probeworthy/instruments";
import { conditionValuesSchema } from "@probeworthy/vehicle";
import { z } from "zod";
import { commandSchema, predictionSchema } from "./command";

/** How the car and the leads stood when something was observed: without it a reading proves nothing. */
export const contextSchema = z.strictObject({
  conditions: conditionValuesSchema,
  unplugged: z.array(z.string()),
  pulledFuses: z.array(z.string()),
});

/** Leads that fell off because the point they stood on is no longer there. */
const lifted = z.array(z.enum(["red", "black"])).optional();
const noticed = z.array(z.strictObject({ id: z.string(), title: z.string(), text: z.string() }));

/** What the learner saw because of a command. Safe to show to the learner who gave it. */
export const observationSchema = z.discriminatedUnion("kind", [
  /** Lamps, feel and sound after something changed. */
  z.strictObject({ kind: z.literal("noticed"), context: contextSchema, items: noticed, lifted }),
  z.strictObject({
    kind: z.literal("fuse"),
    fuse: z.string(),
    /** What the window of the fuse shows, and what is in the holder now. */
    element: z.enum(["intact", "melted"]),
    holder: z.enum(["fitted", "empty"]),
    context: contextSchema,
    items: noticed,
    lifted,
  }),
  z.strictObject({
    kind: z.literal("reading"),
    red: z.string(),
    black: z.string(),
    reading: readingSchema,
    context: contextSchema,
    prediction: predictionSchema.optional(),
  }),
  z.strictObject({
    kind: z.literal("codes"),
    module: z.string(),
    answered: z.boolean(),
    message: z.string(),
    codes: z.array(
      z.strictObject({
        code: z.string(),
        text: z.string(),
        status: z.number().int(),
        statusText: z.array(z.string()),
      }),
    ),
    context: contextSchema,
  }),
  z.strictObject({
    kind: z.literal("liveData"),
    module: z.string(),
    answered: z.boolean(),
    message: z.string(),
    values: z.array(
      z.strictObject({
        name: z.string(),
        title: z.string(),
        unit: z.string(),
        text: z.string(),
        value: z.number(),
      }),
    ),
    context: contextSchema,
  }),
  /** Leads, function, meter fuse: nothing of the car is shown. */
  z.strictObject({ kind: z.literal("bench"), message: z.string() }),
  z.strictObject({ kind: z.literal("submitted") }),
]);
export type Observation = z.infer<typeof observationSchema>;

/** Secret side of an event: slow state of the car and remarks for the review. Never leaves the server. */
export const worldSchema = z.strictObject({
  slow: z.unknown(), // SlowState of the vehicle package, plain data
  meterFuse: z.enum(["good", "open"]),
  remarks: z.array(
    z.enum([
      "ohms_on_live_circuit",
      "amps_across_supply",
      "meter_fuse_blown",
      "fuse_blew",
      /** A control module's connector was parted or joined while the healthy module would have been powered. */
      "unplugged_live",
      /** A fuse or connector was parted or joined while its circuit would have carried current. */
      "parted_under_load",
    ]),
  ),
});
export type World = z.infer<typeof worldSchema>;

/** One line of the append-only log. `sequence` counts from 1 without gaps; line 1 is the hand-over of the car. */
export const attemptEventSchema = z.strictObject({
  sequence: z.number().int().positive(),
  command: z.union([z.strictObject({ type: z.literal("open") }), commandSchema]),
  observation: observationSchema,
  /** Simulated shop time after this command, s. */
  elapsedSeconds: z.number().nonnegative(),
  world: worldSchema,
});
export type AttemptEvent = z.infer<typeof attemptEventSchema>;

/** Why a command was refused; nothing changed. */
export const refusalCodes = [
  "attempt_closed",
  "point_not_accessible",
  "unknown_point",
  "unknown_connector",
  "unknown_fuse",
  "unknown_module",
  "unknown_condition",
  "invalid_condition",
  "already_so",
  "instrument_not_allowed",
  "leads_not_placed",
  "prediction_required",
  "limit_reached",
  "unknown_place",
  "unsolvable",
] as const;
export interface Refusal {
  readonly code: (typeof refusalCodes)[number];
  /** A sentence that says what is and what to do. */
  readonly message: string;
  readonly path?: string;
}
