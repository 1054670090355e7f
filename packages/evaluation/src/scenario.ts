import { conditionValuesSchema, faultKinds } from "@probeworthy/vehicle";
import { z } from "zod";

export const instrumentNames = ["volts", "ohms", "continuity", "amps", "codes", "liveData"] as const;
export const instrumentNameSchema = z.enum(instrumentNames);
export type InstrumentName = z.infer<typeof instrumentNameSchema>;

/** A fixed value, or a range a seed draws from; `log` spreads evenly over decades. */
export const drawnNumberSchema = z.union([
  z.number(),
  z
    .strictObject({ from: z.number(), to: z.number(), spread: z.enum(["linear", "log"]) })
    .refine((range) => range.from < range.to, { message: "from must be below to" })
    .refine((range) => range.spread !== "log" || range.from > 0, { message: "a log range starts above 0" }),
]);
export type DrawnNumber = z.infer<typeof drawnNumberSchema>;

/** A fault of the vehicle package whose numbers may be ranges. Checked against `faultSchema` once drawn. */
export const faultTemplateSchema = z
  .object({ kind: z.enum(faultKinds as [string, ...string[]]) })
  .catchall(z.union([z.string(), drawnNumberSchema]));
export type FaultTemplate = z.infer<typeof faultTemplateSchema>;

export const rubricLines = ["cause", "method", "safety", "efficiency", "report"] as const;
export type RubricLineName = (typeof rubricLines)[number];

export const weightsSchema = z
  .strictObject({
    cause: z.number().min(0),
    method: z.number().min(0),
    safety: z.number().min(0),
    efficiency: z.number().min(0),
    report: z.number().min(0),
  })
  .refine(
    (weights) => Object.values(weights).some((weight) => weight > 0),
    "at least one weight must be above 0",
  );
export type Weights = z.infer<typeof weightsSchema>;

export const scenarioSchema = z.strictObject({
  format: z.literal("probeworthy-scenario-1"),
  id: z.string().regex(/^[a-z][a-z0-9-]*$/, "small letters, digits and hyphens"),
  title: z.string().min(3),
  vehicle: z.string(), // id of the vehicle document
  system: z.string(), // id of the system the job is about
  level: z.enum(["starter", "intermediate", "advanced"]),
  learningGoal: z.string().min(3),
  instructorNote: z.string(),
  /** Wordings of the customer's complaint; one is drawn. */
  complaints: z.array(z.string().min(10)).min(1),
  /** Candidates; one is drawn by weight. An empty `faults` list means nothing is wrong. */
  pool: z
    .array(
      z.strictObject({
        id: z.string().min(1),
        title: z.string().min(3),
        weight: z.number().positive(),
        faults: z.array(faultTemplateSchema),
        /** The behaviour is normal although it surprises: the right cause is "working as designed". */
        normal: z.boolean().optional(),
      }),
    )
    .min(1),
  /** Condition of the vehicle when the job is handed over; missing ones take the vehicle's initial value. */
  startConditions: conditionValuesSchema,
  instruments: z.array(instrumentNameSchema).min(1),
  limits: z.strictObject({
    shopMinutes: z.number().positive(),
    actions: z.number().int().positive(),
  }),
  /** What an experienced technician needs: scale of the efficiency line. */
  par: z.strictObject({ shopMinutes: z.number().positive(), readings: z.number().int().positive() }),
  requirePrediction: z.boolean(),
  weights: weightsSchema,
  passMark: z.number().min(0).max(100),
});
export type ScenarioDocument = z.infer<typeof scenarioSchema>;
