import { meterFunctionSchema } from "@probeworthy/instruments";
import { conditionValuesSchema } from "@probeworthy/vehicle";
import { z } from "zod";

const id = z.string().min(1).max(40);

export const causeKinds = [
  "open",
  "highResistance",
  "shortToGround",
  "shortToSupply",
  "shortBetween",
  "fuseOpen",
  "sensorFault",
  "leakage",
  "relayFault",
  "lampFault",
  "motorFault",
  "moduleFault",
  "wrongPart",
  "crossedConductors",
  "componentFault",
  "battery",
  "workingAsDesigned",
] as const;
export const correctionActions = [
  "repairConductor",
  "repairTerminal",
  "cleanGround",
  "replaceFuse",
  "replaceComponent",
  "chargeOrReplaceBattery",
  "removeShort",
  "explainToCustomer",
] as const;

const causeSchema = z.strictObject({
  kind: z.enum(causeKinds),
  /** A conductor, cavity, connector, ground point, fuse or component; empty only for `workingAsDesigned`. */
  place: z.string().max(40),
  explanation: z.string().trim().min(10, "say which readings show it").max(4000),
});
export type ReportedCause = z.infer<typeof causeSchema>;

/** Causes a report may carry beside its first. */
export const furtherCausesAtMost = 3;

/** Concern, cause, correction: the three parts of a repair order. */
export const reportSchema = z.strictObject({
  concern: z
    .string()
    .trim()
    .min(10, "say in a sentence what the customer's concern is and that you have confirmed it")
    .max(4000),
  cause: causeSchema,
  /** A second fault behind the first; older reports have none. */
  further: z.array(causeSchema).max(furtherCausesAtMost).optional(),
  correction: z.strictObject({
    action: z.enum(correctionActions),
    place: z.string().max(40),
    explanation: z.string().trim().max(4000),
  }),
});
export type Report = z.infer<typeof reportSchema>;

/** What the learner expected before looking: a figure in the base unit, or no figure at all. */
export const predictionSchema = z.union([
  z.strictObject({ kind: z.literal("figure"), value: z.number().finite() }),
  z.strictObject({ kind: z.literal("overload") }),
]);
export type Prediction = z.infer<typeof predictionSchema>;

export const commandSchema = z.discriminatedUnion("type", [
  z.strictObject({ type: z.literal("setConditions"), values: conditionValuesSchema }),
  z.strictObject({ type: z.literal("unplug"), connector: id }),
  z.strictObject({ type: z.literal("plug"), connector: id }),
  z.strictObject({ type: z.literal("pullFuse"), fuse: id }),
  z.strictObject({ type: z.literal("fitFuse"), fuse: id, fresh: z.boolean() }),
  z.strictObject({ type: z.literal("placeLead"), lead: z.enum(["red", "black"]), point: id }),
  z.strictObject({ type: z.literal("liftLead"), lead: z.enum(["red", "black"]) }),
  z.strictObject({ type: z.literal("selectFunction"), function: meterFunctionSchema }),
  z.strictObject({ type: z.literal("takeReading"), prediction: predictionSchema.optional() }),
  z.strictObject({ type: z.literal("replaceMeterFuse") }),
  z.strictObject({ type: z.literal("readCodes"), module: id }),
  z.strictObject({ type: z.literal("readLiveData"), module: id }),
  z.strictObject({ type: z.literal("clearCodes"), module: id }),
  z.strictObject({ type: z.literal("wait"), seconds: z.number().int().min(1).max(3600) }),
  z.strictObject({ type: z.literal("submitReport"), report: reportSchema }),
]);
export type Command = z.infer<typeof commandSchema>;
