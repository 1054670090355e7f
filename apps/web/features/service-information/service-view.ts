import { z } from "zod";

const chartRow = z.strictObject({
  key: z.string(),
  point: z.string(),
  pointTitle: z.string(),
  againstTitle: z.string(),
  function: z.string(),
  conditionTitle: z.string(),
  unplugged: z.array(z.string()),
  /** Value of a car in order, as a meter shows it. */
  value: z.string(),
});

/**
 * What the workshop manual says of a system: made from the vehicle as it leaves the works, never from the job at hand.
 * Strict: an extra key is an error, not a leak.
 */
export const serviceViewSchema = z.strictObject({
  systemTitle: z.string(),
  howItWorks: z.array(z.strictObject({ title: z.string(), paragraphs: z.array(z.string()) })),
  normalSurprises: z.array(z.string()),
  cautions: z.array(z.string()),
  chart: z.array(chartRow),
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
