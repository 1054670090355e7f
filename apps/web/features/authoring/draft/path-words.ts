import { componentSpecs, isComponentKind } from "../fields/component-specs";
import type { FieldSpec } from "../fields/field-spec";
import { type Draft, type DraftRecord, recordsOf } from "../fields/new-record";
import { conditionKinds, type SectionName, sectionNames, sectionSpecs } from "../fields/section-specs";
import { type Path, parsePath } from "./path";

const isSection = (name: unknown): name is SectionName => sectionNames.some((section) => section === name);

/** `components[3].ratingAmps` as `Component F1, rating`: the row by its name, the field by its label. */
export function pathWords(draft: Draft, text: string): string {
  const [section, index, ...rest] = parsePath(text);
  if (!isSection(section)) return text === "" ? "The vehicle" : `Vehicle, ${text}`;
  const { item, title, nameKey } = sectionSpecs[section];
  if (typeof index !== "number") return title;
  const record = recordsOf(draft, section)[index];
  const name = String(record?.[nameKey] ?? "") || `${index + 1}`;
  const row = `${item.charAt(0).toUpperCase()}${item.slice(1)} ${name}`;
  return [row, ...labelsOf(fieldsOf(section, record ?? {}), rest)].join(", ");
}

/** Every field a row has, in the table and in its form. */
export function fieldsOf(section: SectionName, record: DraftRecord): readonly FieldSpec[] {
  const { columns, fields } = sectionSpecs[section];
  if (section === "components" && isComponentKind(record.kind))
    return [...columns, ...componentSpecs[record.kind].fields, ...fields];
  if (section === "conditions")
    return [...columns, ...(record.kind === "number" ? conditionKinds.number : conditionKinds.choice)];
  return [...columns, ...fields];
}

function labelsOf(specs: readonly FieldSpec[], path: Path): string[] {
  const [key, ...rest] = path;
  if (key === undefined) return [];
  const spec = specs.find((one) => one.key === key);
  if (spec === undefined) return [path.map((part) => (typeof part === "number" ? part + 1 : part)).join(" ")];
  const label = spec.label.charAt(0).toLowerCase() + spec.label.slice(1);
  if (spec.type === "group") return [label, ...labelsOf(spec.fields, rest)];
  if (spec.type !== "list") return [label];
  const [index, ...inside] = rest;
  if (typeof index !== "number") return [label];
  const inner = spec.shapes.flatMap(({ fields }) => fields);
  return [`${spec.item} ${index + 1}`, ...labelsOf(inner, inside)];
}
