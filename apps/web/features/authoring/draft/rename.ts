import type { Draft } from "../fields/new-record";
import type { SectionName } from "../fields/section-specs";

/** Properties whose text is a designator, a list of them, or an end or point that begins with one. */
const designatorKeys = new Set([
  "component",
  "components",
  "from",
  "to",
  "point",
  "against",
  "unplugged",
  "motor",
  "loadAmps",
  "speedOf",
  "torqueOf",
  "pulledIn",
  "of",
]);
const conditionKeys = new Set(["condition", "speedCondition", "ambientCondition"]);
/** Here `from` and `to` are terminals of the module itself. */
const ownNames = new Set(["internalLinks"]);

type Rewrite = (text: string) => string;

/**
 * Gives a thing another name everywhere it is spoken of: the ends of conductors, plugs, systems, charts, formulas, places
 * on the drawing. The row's own name is not touched. Symptoms are spoken of nowhere.
 */
export function renameEverywhere(draft: Draft, section: SectionName, from: string, to: string): Draft {
  if (from === "" || from === to || section === "symptoms") return draft;
  if (section === "systems") return withPlaced(draft, (placed) => renameKey(placed, from, to));
  if (section === "conditions") {
    const rewrite: Rewrite = (text) => (text === from ? to : text);
    return walk(draft, { keys: conditionKeys, rewrite, recordKey: ["conditions", from, to] }) as Draft;
  }
  const rewrite: Rewrite = (text) => {
    if (text === from) return to;
    const rest = text.startsWith(from) ? text.slice(from.length) : "";
    return rest.startsWith(":") || rest.startsWith(".") ? `${to}${rest}` : text;
  };
  const renamed = walk(draft, { keys: designatorKeys, rewrite }) as Draft;
  return withPlaced(renamed, (placed) =>
    Object.fromEntries(
      Object.entries(placed).map(([system, places]) => [system, renameKey(places as object, from, to)]),
    ),
  );
}

interface Walk {
  readonly keys: ReadonlySet<string>;
  readonly rewrite: Rewrite;
  /** An object under that property has names as its keys. */
  readonly recordKey?: readonly [key: string, from: string, to: string];
}

function walk(value: unknown, options: Walk, key?: string): unknown {
  if (typeof value === "string")
    return key !== undefined && options.keys.has(key) ? options.rewrite(value) : value;
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value))
    return shared(
      value,
      (value as unknown[]).map((item) => walk(item, options, key)),
    );
  const { recordKey } = options;
  const source =
    recordKey !== undefined && key === recordKey[0] ? renameKey(value, recordKey[1], recordKey[2]) : value;
  const entries = Object.entries(source).map(([name, own]) => [
    name,
    ownNames.has(name) ? own : walk(own, options, name),
  ]);
  return shared(source, Object.fromEntries(entries));
}

/** The value as it was when nothing in it changed, so that what is untouched stays the same object. */
function shared<T extends object>(before: T, after: T): T {
  const keys = Object.keys(before) as (keyof T)[];
  return keys.every((key) => before[key] === after[key]) ? before : after;
}

function renameKey(record: object, from: string, to: string): object {
  if (!Object.hasOwn(record, from)) return record;
  return Object.fromEntries(Object.entries(record).map(([key, value]) => [key === from ? to : key, value]));
}

function withPlaced(draft: Draft, change: (placed: object) => object): Draft {
  const drawing = draft.drawing;
  if (typeof drawing !== "object" || drawing === null || !("placed" in drawing)) return draft;
  const { placed } = drawing;
  if (typeof placed !== "object" || placed === null) return draft;
  return { ...draft, drawing: { ...drawing, placed: change(placed) } };
}
