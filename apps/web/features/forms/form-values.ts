/** An empty number field is null, anything that is not a number stays as text so that the schema can refuse it. */
export function emptyAsNull(value: unknown): unknown {
  if (value === null || value === undefined) return null;
  if (typeof value === "number") return Number.isNaN(value) ? null : value;
  const text = String(value).trim().replace(",", ".");
  if (text === "") return null;
  const number = Number(text);
  return Number.isFinite(number) ? number : text;
}

/** The wall clock of a `datetime-local` field in the reader's zone, as ISO 8601; null when empty. */
export function toInstant(value: unknown): string | null {
  if (typeof value !== "string" || value === "") return null;
  const moment = new Date(value);
  return Number.isNaN(moment.getTime()) ? null : moment.toISOString();
}
