import { z } from "zod";

/** Something of the vehicle that can be looked for, and the systems on whose sheets it stands. */
const indexEntry = z.strictObject({
  id: z.string(),
  kind: z.enum(["component", "connector", "conductor", "splice", "ground"]),
  title: z.string(),
  /** Where it sits, in words. */
  place: z.string().nullable(),
  systems: z.array(z.string()),
  /** Further words it is found by: colour code and name, cross-section, terminals, what they are for. */
  words: z.string(),
  /** Only for conductors: both ends as the document writes them, and the number of the path they belong to. */
  ends: z.tuple([z.string(), z.string()]).nullable(),
  path: z.number().int().nullable(),
});

/**
 * What a reader of the papers can choose from and search in: the sheets, the connectors and everything on them. Made
 * from the vehicle as it leaves the works. Strict: an extra key is an error, not a leak.
 */
export const paperIndexSchema = z.strictObject({
  vehicleTitle: z.string(),
  systems: z.array(z.strictObject({ id: z.string(), title: z.string() })),
  entries: z.array(indexEntry),
});
export type PaperIndex = z.infer<typeof paperIndexSchema>;
export type IndexEntry = PaperIndex["entries"][number];

/** Whose papers: those of a vehicle's newest version, or those of the car of an attempt. */
export const paperHolders = ["vehicles", "attempts"] as const;
export type PaperHolder = (typeof paperHolders)[number];

/** Address of the papers of a vehicle or an attempt; every paper hangs below it. */
export const papersOf = (holder: PaperHolder, id: string): string =>
  `/api/papers/${holder}/${encodeURIComponent(id)}`;

export const chartRowSchema = z.strictObject({
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
export const chartAnswerSchema = z.strictObject({ rows: z.array(chartRowSchema) });
export type ChartRows = z.infer<typeof chartAnswerSchema>["rows"];
