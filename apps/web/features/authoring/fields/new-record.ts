import { type ComponentKind, componentSpecs } from "./component-specs";
import { type conditionKinds, type SectionName, sectionSpecs } from "./section-specs";

export type DraftRecord = Readonly<Record<string, unknown>>;
/** The draft as the workspace holds it: lists of records, however half done. */
export type Draft = Readonly<Record<string, unknown>>;

export const recordsOf = (draft: Draft, section: SectionName): readonly DraftRecord[] => {
  const found = draft[section];
  return Array.isArray(found) ? (found as readonly DraftRecord[]) : [];
};

const designated: readonly SectionName[] = [
  "components",
  "connectors",
  "conductors",
  "splices",
  "groundPoints",
];

/** The first free designator of a letter code in the whole draft: `E3`. */
export function nextDesignator(draft: Draft, letter: string): string {
  const used = new Set(designated.flatMap((section) => recordsOf(draft, section).map(({ id }) => id)));
  let next = 1;
  while (used.has(`${letter}${next}`)) next += 1;
  return `${letter}${next}`;
}

function nextName(draft: Draft, section: SectionName, stem: string): string {
  const { nameKey } = sectionSpecs[section];
  const used = new Set(recordsOf(draft, section).map((record) => record[nameKey]));
  if (!used.has(stem)) return stem;
  let next = 2;
  while (used.has(`${stem}${next}`)) next += 1;
  return `${stem}${next}`;
}

/** A new component of a kind, complete enough to be drawn, with the next free designator. */
export function newComponent(draft: Draft, kind: ComponentKind): DraftRecord {
  const { letter, title, start } = componentSpecs[kind];
  const own = kind === "switch" ? switchWork(draft) : {};
  return { kind, id: nextDesignator(draft, letter), title, ...start, ...own };
}

/** A new switch is worked by the first choice there is, and joins its terminals in the last position of it. */
function switchWork(draft: Draft): DraftRecord {
  const condition = recordsOf(draft, "conditions").find(({ kind }) => kind === "choice");
  if (condition === undefined) return {};
  const options = Array.isArray(condition.options) ? (condition.options as readonly DraftRecord[]) : [];
  const last = options.at(-1)?.value;
  const positions = options.map(({ value }) => [String(value), value === last ? [["1", "2"]] : []] as const);
  return { condition: condition.name, positions: Object.fromEntries(positions) };
}

export function newCondition(draft: Draft, kind: keyof typeof conditionKinds): DraftRecord {
  const name = nextName(draft, "conditions", kind === "choice" ? "key" : "roadSpeed");
  return kind === "choice"
    ? {
        kind,
        name,
        title: name === "key" ? "Key" : name,
        options: [
          { value: "off", title: "Off" },
          { value: "on", title: "On" },
        ],
        initial: "off",
      }
    : { kind, name, title: name, unit: "km/h", minimum: 0, maximum: 150, step: 1, initial: 0 };
}

/** A new row of any other section. */
export function newRecord(draft: Draft, section: SectionName): DraftRecord {
  const { letter, start } = sectionSpecs[section];
  if (section === "components") return newComponent(draft, "lamp");
  if (section === "conditions") return newCondition(draft, "choice");
  if (letter !== "") return { id: nextDesignator(draft, letter), ...start };
  const id = nextName(draft, section, section === "systems" ? "system" : "symptom");
  // A first system shows everything there is.
  const all =
    section === "systems" ? { components: recordsOf(draft, "components").map(({ id: own }) => own) } : {};
  return { id, ...start, ...all };
}

/** A copy of a row under the next free name. */
export function duplicate(draft: Draft, section: SectionName, record: DraftRecord): DraftRecord {
  const { nameKey } = sectionSpecs[section];
  const name = String(record[nameKey] ?? "");
  const letters = /^[A-Z]+/.exec(name)?.[0];
  const next = letters === undefined ? nextName(draft, section, name) : nextDesignator(draft, letters);
  return { ...record, [nameKey]: next };
}
