import { z } from "zod";
import { componentSchema } from "./component";
import { conditionSchema, conditionValuesSchema } from "./condition";
import { expressionSchema } from "./expression";
import {
  camelNameSchema,
  componentTerminalSchema,
  conductorColourSchema,
  conductorEndSchema,
  designatorSchema,
} from "./names";
import { zoneSchema } from "./zone";

export const connectorSchema = z.strictObject({
  id: designatorSchema,
  title: z.string().min(1),
  place: z.string().optional(),
  zone: zoneSchema.optional(),
  /** Housing colour in words; rows × columns of the face, cavities numbered row by row seen from the wire side. */
  housing: z.string().optional(),
  rows: z.number().int().min(1).max(8),
  columns: z.number().int().min(1).max(40),
  /** The component it plugs into; absent for an in-line connector between two harness parts. */
  component: designatorSchema.optional(),
  cavities: z
    .array(
      z.strictObject({
        cavity: z.string().regex(/^[A-Z0-9]{1,3}$/),
        /** Component terminal behind the component face; absent for an in-line connector or an empty cavity. */
        terminal: z.string().optional(),
        contactOhms: z.number().positive().optional(), // default 4 mΩ
      }),
    )
    .min(1),
});
export type Connector = z.infer<typeof connectorSchema>;

export const conductorSchema = z.strictObject({
  id: designatorSchema,
  from: conductorEndSchema,
  to: conductorEndSchema,
  colour: conductorColourSchema,
  squareMillimetres: z.number().positive(),
  metres: z.number().positive(),
  /** Conductors of one twisted pair carry the same name. */
  twistedPair: z.string().optional(),
});
export type Conductor = z.infer<typeof conductorSchema>;

export const spliceSchema = z.strictObject({
  id: designatorSchema,
  title: z.string().optional(),
  place: z.string().optional(),
  zone: zoneSchema.optional(),
});
export const groundPointSchema = z.strictObject({
  id: designatorSchema,
  title: z.string().min(1),
  place: z.string().optional(),
  zone: zoneSchema.optional(),
  contactOhms: z.number().positive().optional(), // ring to body metal, default 0.3 mΩ
});

/** One row of a terminal chart: what is measured, between which points, in which condition. */
export const chartRowSchema = z.strictObject({
  point: z.string(), // a test point id
  against: z.string().optional(), // default: battery negative
  function: z.string().min(1),
  quantity: z.enum(["volts", "ohms"]),
  conditions: conditionValuesSchema,
  conditionTitle: z.string().min(1),
  unplugged: z.array(designatorSchema).optional(),
});

/** What the driver can notice. The first band whose `below` exceeds the value is shown; the last has no `below`. */
export const symptomSchema = z.strictObject({
  id: camelNameSchema,
  title: z.string().min(1),
  value: expressionSchema,
  bands: z
    .array(z.strictObject({ below: z.number().optional(), text: z.string().min(1), normal: z.boolean() }))
    .min(1),
});

export const systemSchema = z.strictObject({
  id: z.string().regex(/^[a-z][a-z0-9-]*$/),
  title: z.string().min(1),
  components: z.array(designatorSchema).min(1),
  howItWorks: z.array(z.strictObject({ title: z.string(), paragraphs: z.array(z.string()).min(1) })),
  normalSurprises: z.array(z.string()),
  cautions: z.array(z.string()),
  chart: z.array(chartRowSchema),
});

/** The executable document: everything present; cross references are checked by `parseVehicle`. */
export const vehicleDocumentSchema = z.strictObject({
  format: z.literal("probeworthy-vehicle-1"),
  id: z.string().regex(/^[a-z][a-z0-9-]*$/),
  title: z.string().min(1),
  description: z.string(),
  nominalVolts: z.number().positive(),
  conditions: z.array(conditionSchema),
  components: z.array(componentSchema).min(1),
  connectors: z.array(connectorSchema),
  conductors: z.array(conductorSchema),
  splices: z.array(spliceSchema),
  groundPoints: z.array(groundPointSchema).min(1),
  symptoms: z.array(symptomSchema),
  systems: z.array(systemSchema).min(1),
  /** Places an author has moved on the drawing of a system, in the drawing's own units; everything else is laid out. */
  drawing: z
    .strictObject({
      placed: z.record(
        systemSchema.shape.id,
        z.record(designatorSchema, z.strictObject({ x: z.number(), y: z.number() })),
      ),
    })
    .optional(),
});
export type VehicleDocument = z.infer<typeof vehicleDocumentSchema>;
export const componentTerminal = componentTerminalSchema;
