import { z } from "zod";
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
  systems: z.array(z.strictObject({ id: z.string(), service: serviceViewSchema })),
});
export type VehicleView = z.infer<typeof vehicleViewSchema>;
