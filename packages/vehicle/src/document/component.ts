import { z } from "zod";
import { expressionSchema } from "./expression";
import { moduleSchema } from "./module";
import { camelNameSchema, designatorSchema, terminalNameSchema } from "./names";

const base = {
  id: designatorSchema,
  title: z.string().min(1),
  /** Where it sits in the vehicle, in shop words. */
  place: z.string().optional(),
};
const ohms = z.number().positive();

/** Terminals `+` and `-`. Open-circuit volts follow the state of charge; see battery.ts for the curve. */
const batterySchema = z.strictObject({
  ...base,
  kind: z.literal("battery"),
  capacityAmpereHours: z.number().positive(),
  internalOhms: ohms,
  stateOfCharge: z.number().min(0).max(1),
});

/** Terminals `B+` and `31` (its case). Charges while the engine speed condition is above `minimumSpeed`. */
const chargingSourceSchema = z.strictObject({
  ...base,
  kind: z.literal("chargingSource"),
  regulatedVolts: z.number().positive(),
  outputOhms: ohms,
  limitAmps: z.number().positive(),
  speedCondition: camelNameSchema,
  minimumSpeed: z.number().positive(),
});

/** Terminals `1` and `2`, both sockets of the fuse holder. */
const fuseSchema = z.strictObject({
  ...base,
  kind: z.literal("fuse"),
  ratingAmps: z.number().positive(),
  /** Blade sizes after ISO 8820-3: type F (small blade), C (medium blade), E (large blade); bolted strips. */
  form: z.enum(["F", "C", "E", "bolted"]),
  coldOhms: ohms,
});

/** A rotary or push switch driven by a choice condition: which terminal pairs are joined in each position. */
const switchSchema = z.strictObject({
  ...base,
  kind: z.literal("switch"),
  terminals: z.array(terminalNameSchema).min(2),
  condition: camelNameSchema,
  positions: z.record(camelNameSchema, z.array(z.tuple([terminalNameSchema, terminalNameSchema]))),
  contactOhms: ohms,
});

/** Terminals `1` and `2`. A heater, a ballast, a discrete resistor. */
const resistorSchema = z.strictObject({ ...base, kind: z.literal("resistor"), ohms });

/** Terminals `1` and `2`. */
const lampSchema = z.strictObject({
  ...base,
  kind: z.literal("lamp"),
  ratedVolts: z.number().positive(),
  ratedWatts: z.number().positive(),
});

/** Terminals `1` (anode) and `2` (cathode). */
const diodeSchema = z.strictObject({
  ...base,
  kind: z.literal("diode"),
  breakdownVolts: z.number().positive().optional(),
});

/** Terminals `1` and `2`. Brushed motor held against its load: winding resistance with copper's temperature law, two-node heat. */
const motorSchema = z.strictObject({
  ...base,
  kind: z.literal("motor"),
  windingOhmsAt20: ohms,
  torquePerAmp: z.number().positive(),
  heat: z.strictObject({
    windingToHousing: z.number().positive(), // K/W
    housingToAmbient: z.number().positive(), // K/W
    windingCapacity: z.number().positive(), // J/K
    housingCapacity: z.number().positive(), // J/K
    ambientCondition: camelNameSchema,
  }),
});

/**
 * Dual mirrored torque sensor, four terminals. Both outputs are ratiometric to the sensor's own supply and rest at
 * mid-scale; output 1 rises with effort to the right, output 2 mirrors it. Each is a divider between supply and ground,
 * so that an open supply pulls the outputs low and an open ground pulls them high.
 */
const torqueSensorSchema = z.strictObject({
  ...base,
  kind: z.literal("torqueSensor"),
  terminals: z.strictObject({
    supply: terminalNameSchema,
    ground: terminalNameSchema,
    signal1: terminalNameSchema,
    signal2: terminalNameSchema,
  }),
  effort: expressionSchema, // N·m through the torsion bar, positive to the right
  stiffness: z.number().positive(), // N·m per degree of torsion-bar twist
  maximumTwist: z.number().positive(), // degrees at the mechanical stop
  spanPerDegree: z.number().positive(), // fraction of the supply per degree of twist
  trackOhms: ohms,
  outputOhms: ohms,
  /** Supply current besides the two tracks, A. */
  supplyAmps: z.number().nonnegative(),
});

/** Terminals `1` and `2`. Negative-temperature-coefficient resistor given by a table of °C and Ω (interpolated in ln R over 1/T). */
const thermistorSchema = z.strictObject({
  ...base,
  kind: z.literal("thermistor"),
  temperature: expressionSchema,
  table: z.array(z.tuple([z.number(), z.number().positive()])).min(2),
});

/** Only terminals: a diagnostic socket (SAE J1962), a joint box, a capped option connector. */
const passiveSchema = z.strictObject({
  ...base,
  kind: z.literal("passive"),
  terminals: z.array(terminalNameSchema).min(1),
  /** Marks the diagnostic socket and says which terminals a scan tool uses. */
  diagnosticSocket: z
    .strictObject({
      supply: terminalNameSchema,
      ground: terminalNameSchema,
      canHigh: terminalNameSchema,
      canLow: terminalNameSchema,
    })
    .optional(),
});

export const componentSchema = z.discriminatedUnion("kind", [
  batterySchema,
  chargingSourceSchema,
  fuseSchema,
  switchSchema,
  resistorSchema,
  lampSchema,
  diodeSchema,
  motorSchema,
  torqueSensorSchema,
  thermistorSchema,
  passiveSchema,
  moduleSchema,
]);
export type Component = z.infer<typeof componentSchema>;
export type ComponentOf<K extends Component["kind"]> = Extract<Component, { kind: K }>;
export const componentKinds = componentSchema.options.map((option) => option.shape.kind.value);
