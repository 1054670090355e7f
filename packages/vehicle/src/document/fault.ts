import { z } from "zod";

const ohms = z.number().positive();
const at = z.string().min(1);

/**
 * A fault is a transformation of the vehicle. Places are written as
 * `W12` a conductor · `X2.5` the contact of a cavity · `XE1` the bolted contact of a ground point ·
 * `A1:T1` a component terminal (inside the component) · any test point id for shorts.
 */
export const faultSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("open"), at }),
  z.strictObject({ kind: z.literal("seriesResistance"), at, ohms }),
  z.strictObject({ kind: z.literal("shortToGround"), at, ohms }),
  /** `supply` is the test point of the conductor it has chafed against. */
  z.strictObject({ kind: z.literal("shortToSupply"), at, supply: at, ohms }),
  z.strictObject({ kind: z.literal("shortBetween"), at, other: at, ohms }),
  /** The fuse has opened for no lasting reason: a new one holds. */
  z.strictObject({ kind: z.literal("fuseBlown"), component: at }),
  /** `channel` is the terminal name of the sensor output. */
  z.strictObject({ kind: z.literal("sensorOffset"), component: at, channel: z.string(), volts: z.number() }),
  z.strictObject({ kind: z.literal("sensorStuck"), component: at, channel: z.string(), volts: z.number() }),
  z.strictObject({ kind: z.literal("internalOpen"), component: at, terminal: z.string() }),
  /** Not a defect: the winding is at this temperature when the job starts. */
  z.strictObject({ kind: z.literal("motorHot"), component: at, celsius: z.number() }),
  z.strictObject({
    kind: z.literal("weakBattery"),
    component: at,
    stateOfCharge: z.number().min(0).max(1),
    internalOhmsFactor: z.number().min(1),
  }),
]);
export type Fault = z.infer<typeof faultSchema>;
export const faultKinds = faultSchema.options.map((option) => option.shape.kind.value);
