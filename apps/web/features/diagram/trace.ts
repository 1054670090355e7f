import type { Sheet } from "@probeworthy/diagram";
import type { IndexEntry, PaperIndex } from "@/features/papers/papers-view";

/** A path from end to end: joined through splices and in-line connectors, ending at components and ground points. */
export interface Trace {
  readonly start: string;
  readonly conductors: ReadonlySet<string>;
  /** Places and conductors in turn, from one end along the path; a branch starts again at the place it leaves. */
  readonly stations: readonly Station[];
}

export interface Station {
  readonly key: string;
  readonly kind: "place" | "conductor" | "branch";
  readonly id: string;
  readonly text: string;
  readonly systems: readonly string[];
}

const joint = (end: string) => end.replace(/\/b$/, "");
const headOf = (end: string) => end.split(/[.:]/)[0] ?? end;

/** The whole path a conductor belongs to; undefined for a conductor that is not in the vehicle. */
export function traceConductor(index: PaperIndex, start: string): Trace | undefined {
  const own = index.entries.find(({ kind, id }) => kind === "conductor" && id === start);
  if (own === undefined) return undefined;
  const members = index.entries.filter(
    ({ kind, id, path }) => kind === "conductor" && (id === start || (path !== null && path === own.path)),
  );
  const known = new Map(index.entries.filter(({ kind }) => kind !== "conductor").map((one) => [one.id, one]));
  return { start, conductors: new Set(members.map(({ id }) => id)), stations: walk(members, known) };
}

function walk(members: readonly IndexEntry[], known: ReadonlyMap<string, IndexEntry>): readonly Station[] {
  const at = new Map<string, IndexEntry[]>();
  for (const member of members)
    for (const end of member.ends ?? []) at.set(joint(end), [...(at.get(joint(end)) ?? []), member]);
  const tip = [...at.keys()].find((end) => at.get(end)?.length === 1) ?? [...at.keys()][0];
  const stations: Station[] = [];
  const done = new Set<IndexEntry>();
  const place = (end: string, kind: Station["kind"]) => {
    const entry = known.get(headOf(end));
    const text = entry === undefined ? end : `${end} ${entry.title}`;
    stations.push({ key: `${stations.length}`, kind, id: headOf(end), text, systems: entry?.systems ?? [] });
  };
  const follow = (end: string) => {
    let isFirst = true;
    for (const next of at.get(end) ?? []) {
      if (done.has(next)) continue;
      done.add(next);
      if (!isFirst) place(end, "branch");
      isFirst = false;
      stations.push({
        key: `${stations.length}`,
        kind: "conductor",
        id: next.id,
        text: `${next.id} ${next.title.replace(/, [^,]+$/, "")}`,
        systems: next.systems,
      });
      const other = next.ends?.map(joint).find((candidate) => candidate !== end) ?? end;
      place(other, "place");
      follow(other);
    }
  };
  if (tip !== undefined) {
    place(tip, "place");
    follow(tip);
  }
  return stations;
}

/** Designators of what the traced conductors touch on this sheet. */
export function ownersOnPath(sheet: Sheet, traced: ReadonlySet<string>): ReadonlySet<string> {
  const owners = new Set<string>();
  const connectors = new Map(sheet.connectors.map((connector) => [connector.id, connector]));
  for (const { id, from, to } of sheet.conductors) {
    if (!traced.has(id)) continue;
    for (const head of [from, to].map(headOf)) {
      owners.add(head);
      const component = connectors.get(head)?.component;
      if (component !== undefined) owners.add(component);
    }
  }
  return owners;
}
