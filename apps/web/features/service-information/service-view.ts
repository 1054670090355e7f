import { zones } from "@probeworthy/vehicle";
import { z } from "zod";

const systemSchema = z.strictObject({
  id: z.string(),
  title: z.string(),
  howItWorks: z.array(z.strictObject({ title: z.string(), paragraphs: z.array(z.string()) })),
  normalSurprises: z.array(z.string()),
  cautions: z.array(z.string()),
  codes: z.array(
    z.strictObject({
      key: z.string(),
      module: z.string(),
      code: z.string(),
      text: z.string(),
      causes: z.array(z.string()),
      warningLamp: z.boolean(),
    }),
  ),
  places: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      place: z.string().nullable(),
      zone: z.enum(zones).nullable(),
    }),
  ),
  /** Connectors on components of this system; all of them are listed with the vehicle. */
  connectors: z.array(z.string()),
});

/**
 * What the workshop manual says: made from the vehicle as it leaves the works, never from the job at hand.
 * Strict: an extra key is an error, not a leak.
 */
export const serviceViewSchema = z.strictObject({
  systems: z.array(systemSchema),
  connectors: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      place: z.string().nullable(),
      housing: z.string().nullable(),
      component: z.string().nullable(),
      /** To be shown and accepted before it is pulled apart. */
      cautions: z.array(z.string()),
      cavities: z.array(
        z.strictObject({
          cavity: z.string(),
          terminal: z.string().nullable(),
          function: z.string().nullable(),
          conductor: z.string().nullable(),
          colour: z.string().nullable(),
          squareMillimetres: z.number().nullable(),
        }),
      ),
    }),
  ),
  fuses: z.array(
    z.strictObject({
      id: z.string(),
      title: z.string(),
      place: z.string().nullable(),
      ratingAmps: z.number(),
      form: z.string(),
      cautions: z.array(z.string()),
    }),
  ),
});
export type ServiceView = z.infer<typeof serviceViewSchema>;
export type ServiceSystem = ServiceView["systems"][number];
export type ServiceConnector = ServiceView["connectors"][number];
