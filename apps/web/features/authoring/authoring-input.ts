import { z } from "zod";

const title = z
  .string()
  .trim()
  .min(3, "Write a name of at least 3 characters.")
  .max(120, "At most 120 characters.");
const csv = z.string().max(500_000, "At most 500 000 characters.");

/** A moment the author's screen has seen; null saves over whatever is there, on purpose. */
const seenAt = z.iso.datetime({ offset: true }).nullable();

/** A vehicle however half done; only its title is checked. */
export const looseVehicleSchema = z.looseObject({ title: z.string().max(200) });

export const newVehicleSchema = z.discriminatedUnion("start", [
  z.strictObject({ start: z.literal("blank"), title }),
  z.strictObject({
    start: z.literal("training"),
    title,
    systems: z.array(z.string()).min(1, "Choose one system or more."),
    placement: z.string().nullable(),
  }),
  z.strictObject({ start: z.literal("lists"), title, connectors: csv, conductors: csv }),
  z.strictObject({ start: z.literal("json"), title: title.nullable(), document: z.unknown() }),
]);
export type NewVehicle = z.infer<typeof newVehicleSchema>;

export const listsInputSchema = z.strictObject({ connectors: csv, conductors: csv });

export const saveVehicleDraftSchema = z.strictObject({ seenAt, document: looseVehicleSchema });

export const publishVehicleSchema = z.strictObject({ seenAt: z.iso.datetime({ offset: true }) });

export const drawDraftSchema = z.strictObject({ document: looseVehicleSchema, systemId: z.string() });

/** `csv` null computes the chart rows of the document itself. */
export const chartDraftSchema = z.strictObject({
  document: looseVehicleSchema,
  systemId: z.string(),
  csv: csv.nullable(),
});
