import { createHash } from "node:crypto";

/** SHA-256 of a JSON document, the same whatever the order of its keys (the database does not keep it). */
export function contentHash(document: unknown): string {
  return createHash("sha256").update(canonical(document)).digest("hex");
}

function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map((item) => canonical(item ?? null)).join(",")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value) ?? "null";
  const members = Object.entries(value)
    .filter(([, member]) => member !== undefined)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, member]) => `${JSON.stringify(key)}:${canonical(member)}`);
  return `{${members.join(",")}}`;
}
