import { conditionSchema } from "@probeworthy/vehicle";
import { z } from "zod";
import { paperIndexSchema } from "../papers/papers-view";
import { serviceViewSchema } from "../service-information/service-view";

export const vehiclesViewSchema = z.strictObject({
  vehicles: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      /** Newest version; null while nothing has been published. */
      version: z.number().int().nullable(),
      systems: z.array(z.string()),
      charts: z.number().int(),
      /** Made in this organisation: can be changed and archived. */
      own: z.boolean(),
      hasDraft: z.boolean(),
    }),
  ),
});
export type VehiclesView = z.infer<typeof vehiclesViewSchema>;

const livePlace = z.array(z.strictObject({ place: z.string(), title: z.string() }));
const livePlacesSchema = z.strictObject({
  open: livePlace,
  seriesResistance: livePlace,
  shortToGround: livePlace,
  fuseBlown: livePlace,
});
export type LivePlaces = z.infer<typeof livePlacesSchema>;

export const vehicleViewSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  description: z.string(),
  version: z.number().int(),
  own: z.boolean(),
  counts: z.strictObject({
    components: z.number().int(),
    connectors: z.number().int(),
    conductors: z.number().int(),
  }),
  service: serviceViewSchema,
  index: paperIndexSchema,
  /** For the live drawing: what can be set, and where its faults can be put. */
  conditions: z.array(conditionSchema),
  livePlaces: livePlacesSchema,
});
export type VehicleView = z.infer<typeof vehicleViewSchema>;
