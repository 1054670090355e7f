import { type Draft, recordsOf } from "../fields/new-record";
import { type SectionName, sectionNames, sectionSpecs } from "../fields/section-specs";
import { parsePath } from "./path";

const isSection = (name: unknown): name is SectionName => sectionNames.some((section) => section === name);

/** `components[3].ratingAmps` as `Component F1, ratingAmps`: the row by its name, the field by its place. */
export function pathWords(draft: Draft, text: string): string {
  const [section, index, ...rest] = parsePath(text);
  if (!isSection(section)) return text === "" ? "The vehicle" : text;
  const { item, title, nameKey } = sectionSpecs[section];
  if (typeof index !== "number") return title;
  const record = recordsOf(draft, section)[index];
  const name = String(record?.[nameKey] ?? "") || `${index + 1}`;
  const inside = rest.map((part) => (typeof part === "number" ? String(part + 1) : part)).join(" ");
  const row = `${item.charAt(0).toUpperCase()}${item.slice(1)} ${name}`;
  return inside === "" ? row : `${row}, ${inside}`;
}
