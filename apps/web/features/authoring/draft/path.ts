/** Where something stands in the document: `components[3].ratingAmps` as its parts. */
export type Path = readonly (string | number)[];

/** `["components", 3, "ratingAmps"]` → `components[3].ratingAmps`, the form messages use. */
export const formatPath = (path: Path): string =>
  path.reduce<string>((text, key) => {
    if (typeof key === "number") return `${text}[${key}]`;
    return text === "" ? key : `${text}.${key}`;
  }, "");

/** The inverse of `formatPath`. */
export const parsePath = (text: string): Path =>
  [...text.matchAll(/\[(\d+)\]|([^.[\]]+)/g)].map(([, index, key]) =>
    index === undefined ? (key ?? "") : Number(index),
  );

const isContainer = (value: unknown): value is Record<string | number, unknown> =>
  typeof value === "object" && value !== null;

/** What stands at a path; undefined where the path leaves the document. */
export const getAt = (root: unknown, path: Path): unknown =>
  path.reduce<unknown>((value, key) => (isContainer(value) ? value[key] : undefined), root);

/**
 * A copy with `value` at the path; everything beside the path is shared with the original. `undefined` takes a property
 * out (an optional field left empty). Missing objects and lists on the way are made.
 */
export function setAt<T>(root: T, path: Path, value: unknown): T {
  return set(root, path, value) as T;
}

function set(root: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (typeof key === "number") {
    const list = Array.isArray(root) ? [...(root as unknown[])] : [];
    list[key] = set(list[key], rest, value);
    return list;
  }
  const record: Record<string, unknown> = isContainer(root) && !Array.isArray(root) ? { ...root } : {};
  const next = set(record[key], rest, value);
  if (next === undefined) delete record[key];
  else record[key] = next;
  return record;
}

const listAt = (root: unknown, path: Path): unknown[] => {
  const found = getAt(root, path);
  return Array.isArray(found) ? [...(found as unknown[])] : [];
};

/** A copy with `items` put into the list at `path` before `index`; at its end without one. */
export function insertAt<T>(root: T, path: Path, items: readonly unknown[], index?: number): T {
  const list = listAt(root, path);
  list.splice(index ?? list.length, 0, ...items);
  return setAt(root, path, list);
}

/** A copy without the item at `index` of the list at `path`. */
export function removeAt<T>(root: T, path: Path, index: number): T {
  return setAt(
    root,
    path,
    listAt(root, path).filter((_, position) => position !== index),
  );
}

/** A copy with the item at `from` standing at `to`. */
export function moveAt<T>(root: T, path: Path, from: number, to: number): T {
  const list = listAt(root, path);
  if (to < 0 || to >= list.length) return root;
  const [item] = list.splice(from, 1);
  list.splice(to, 0, item);
  return setAt(root, path, list);
}
