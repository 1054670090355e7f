import { z } from "zod";

/** What keeps a draft from being published, or looks like an oversight, and where it stands: `components[3].ratingAmps`. */
export const authoringMessageSchema = z.strictObject({
  severity: z.enum(["error", "warning"]),
  path: z.string(),
  message: z.string(),
});

/** Everything the workspace starts from. */
export const authoringViewSchema = z.strictObject({
  vehicleId: z.string(),
  title: z.string(),
  /** Moment of the last save, handed back with the next one. */
  savedAt: z.string(),
  /** Newest published version; null before the first. */
  publishedNumber: z.number().int().nullable(),
  document: z.record(z.string(), z.unknown()),
  messages: z.array(authoringMessageSchema),
});
export type AuthoringView = z.infer<typeof authoringViewSchema>;

export const draftSavedSchema = z.strictObject({
  savedAt: z.string(),
  messages: z.array(authoringMessageSchema),
});

/** The drawing of one system of a draft (`Sheet` of the diagram package), or why there is none yet. */
export const draftDrawingSchema = z.discriminatedUnion("drawn", [
  z.strictObject({ drawn: z.literal(true), sheet: z.record(z.string(), z.unknown()) }),
  z.strictObject({ drawn: z.literal(false), reason: z.string() }),
]);

export const draftChartSchema = z.discriminatedUnion("computed", [
  z.strictObject({
    computed: z.literal(true),
    rows: z.array(
      z.strictObject({
        point: z.string(),
        against: z.string().nullable(),
        function: z.string(),
        condition: z.string(),
        /** In `unit`; null for an open. */
        value: z.number().nullable(),
        unit: z.string(),
        /** Of a pasted chart: what it expects and whether the vehicle agrees; null for the vehicle's own rows. */
        expected: z.string().nullable(),
        agrees: z.boolean().nullable(),
        message: z.string(),
      }),
    ),
  }),
  z.strictObject({
    computed: z.literal(false),
    reason: z.string(),
    errors: z.array(z.strictObject({ path: z.string(), message: z.string() })),
  }),
]);
export type DraftChart = z.infer<typeof draftChartSchema>;

/** One readable difference: `F1 Fuse headlamp: rating 15 → 20`. */
export const changeSchema = z.strictObject({
  kind: z.enum(["added", "removed", "changed"]),
  /** Where, in words: `Conductor W12`. */
  what: z.string(),
  detail: z.string(),
});

export const changesSchema = z.strictObject({ changes: z.array(changeSchema) });
export type Changes = z.infer<typeof changesSchema>;

export const versionsViewSchema = z.strictObject({
  vehicleId: z.string(),
  title: z.string(),
  hasDraft: z.boolean(),
  versions: z.array(
    z.strictObject({ number: z.number().int(), createdAt: z.string(), createdBy: z.string().nullable() }),
  ),
  from: z.number().int().nullable(),
  to: z.number().int().nullable(),
  changes: z.array(changeSchema),
});
export type VersionsView = z.infer<typeof versionsViewSchema>;

/** What a new vehicle can start from. */
export const newVehicleViewSchema = z.strictObject({
  trainingSystems: z.array(
    z.strictObject({ id: z.string(), title: z.string(), components: z.number().int() }),
  ),
  placements: z.array(z.strictObject({ id: z.string(), title: z.string() })),
});
export type NewVehicleView = z.infer<typeof newVehicleViewSchema>;

/** What two spreadsheets would become. */
export const listsPreviewSchema = z.strictObject({
  components: z.number().int(),
  connectors: z.number().int(),
  conductors: z.number().int(),
  messages: z.array(
    z.strictObject({
      file: z.enum(["connectors", "conductors"]),
      line: z.number().int(),
      severity: z.enum(["error", "warning"]),
      message: z.string(),
    }),
  ),
});
export type ListsPreview = z.infer<typeof listsPreviewSchema>;
