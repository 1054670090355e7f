import { z } from "zod";

export const chartResultSchema = z.strictObject({
  rows: z.array(
    z.strictObject({
      line: z.number().int(),
      point: z.string(),
      against: z.string().nullable(),
      function: z.string(),
      condition: z.string(),
      expected: z.string(),
      /** What the vehicle reads, in `unit`; null for an open. */
      value: z.number().nullable(),
      unit: z.string(),
      agrees: z.boolean(),
      message: z.string(),
    }),
  ),
});
export type ChartResult = z.infer<typeof chartResultSchema>;

export const chartsViewSchema = z.strictObject({
  vehicleId: z.string(),
  vehicleName: z.string(),
  version: z.number().int(),
  conditionTitles: z.array(z.string()),
  conditionNames: z.array(z.strictObject({ name: z.string(), title: z.string(), values: z.string() })),
  charts: z.array(
    z.strictObject({
      id: z.string(),
      name: z.string(),
      createdAt: z.string(),
      /** Checked against the version of the vehicle that is in use now. */
      current: z.boolean(),
    }),
  ),
});
export type ChartsView = z.infer<typeof chartsViewSchema>;

export const chartViewSchema = z.strictObject({
  id: z.string(),
  name: z.string(),
  createdAt: z.string(),
  vehicleId: z.string(),
  vehicleName: z.string(),
  version: z.number().int(),
  result: chartResultSchema,
});
export type ChartView = z.infer<typeof chartViewSchema>;
