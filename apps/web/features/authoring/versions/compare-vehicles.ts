import type { Changes } from "../authoring-view";
import { type Draft, type DraftRecord, recordsOf } from "../fields/new-record";
import { type SectionName, sectionNames, sectionSpecs } from "../fields/section-specs";

type Change = Changes["changes"][number];

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Differences between two vehicles in the words of the workspace, in the order of its sections. */
export function compareVehicles(before: Draft, after: Draft): Change[] {
  const whole = (["title", "description", "nominalVolts"] as const).flatMap((key) =>
    leaves(key, before[key], after[key]).map(
      (detail) => ({ kind: "changed", what: "Vehicle", detail }) as const,
    ),
  );
  const drawing =
    JSON.stringify(before.drawing) === JSON.stringify(after.drawing)
      ? []
      : [{ kind: "changed", what: "Drawing", detail: "places of parts" } as const];
  return [...whole, ...sectionNames.flatMap((section) => compareSection(section, before, after)), ...drawing];
}

function compareSection(section: SectionName, before: Draft, after: Draft): Change[] {
  const { item, nameKey } = sectionSpecs[section];
  const byName = (draft: Draft) =>
    new Map(recordsOf(draft, section).map((record) => [String(record[nameKey] ?? ""), record]));
  const [old, now] = [byName(before), byName(after)];
  const what = (name: string, record: DraftRecord | undefined) =>
    [`${capital(item)} ${name}`, typeof record?.title === "string" ? record.title : ""]
      .filter(Boolean)
      .join(", ");
  const removed = [...old].flatMap(([name, record]): Change[] =>
    now.has(name) ? [] : [{ kind: "removed", what: what(name, record), detail: "" }],
  );
  const others = [...now].flatMap(([name, record]): Change[] => {
    const earlier = old.get(name);
    if (earlier === undefined)
      return [{ kind: "added", what: what(name, record), detail: summary(section, record) }];
    const details = leaves("", earlier, record);
    return details.length === 0
      ? []
      : [{ kind: "changed", what: what(name, record), detail: details.join("; ") }];
  });
  return [...others, ...removed];
}

function summary(section: SectionName, record: DraftRecord): string {
  if (section === "conductors")
    return `${String(record.from)} to ${String(record.to)}, ${String(record.colour)}, ${String(record.squareMillimetres)} mm², ${String(record.metres)} m`;
  return "";
}

/** Every value inside that differs, as `ratingAmps 15 → 20`. Lists of plain values are compared as wholes. */
function leaves(path: string, before: unknown, after: unknown): string[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  if (isRecord(before) && isRecord(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((key) => leaves(path === "" ? key : `${path}.${key}`, before[key], after[key]));
  }
  if (isRecords(before) && isRecords(after)) {
    const length = Math.max(before.length, after.length);
    return Array.from({ length }, (_, index) =>
      leaves(`${path} ${index + 1}`, before[index], after[index]),
    ).flat();
  }
  return [`${path} ${shown(before)} → ${shown(after)}`];
}

const isRecord = (value: unknown): value is DraftRecord =>
  typeof value === "object" && value !== null && !Array.isArray(value);
const isRecords = (value: unknown): value is readonly DraftRecord[] =>
  Array.isArray(value) && value.every(isRecord) && value.length > 0;

function shown(value: unknown): string {
  if (value === undefined) return "none";
  const text = typeof value === "string" ? `“${value}”` : JSON.stringify(value);
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
}
