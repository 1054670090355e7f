import "server-only";
import { colourName, splitColour } from "@probeworthy/diagram";
import { systemsOfConductors } from "@probeworthy/diagram/layout";
import type { VehicleDocument } from "@probeworthy/vehicle";
import { type IndexEntry, type PaperIndex, paperIndexSchema } from "@/features/papers/papers-view";
import { BoundedCache } from "../services/attempts/bounded-cache";

const made = new BoundedCache<PaperIndex>(16);

/** Everything a reader can look for in the papers of a vehicle. A version never changes, so it is made once. */
export function paperIndexOf(versionId: string, document: VehicleDocument): PaperIndex {
  const known = made.get(versionId);
  if (known !== undefined) return known;
  const index = paperIndexSchema.parse(makeIndex(document));
  made.set(versionId, index);
  return index;
}

function makeIndex(document: VehicleDocument): PaperIndex {
  const bySystem = systemsOfConductors(document);
  const systemsAt = (touches: (end: string) => boolean): string[] => {
    const found = document.conductors
      .filter(({ from, to }) => touches(from) || touches(to))
      .flatMap(({ id }) => bySystem.get(id) ?? []);
    return document.systems.map(({ id }) => id).filter((id) => found.includes(id));
  };
  const ownSystem = (id: string) =>
    document.systems.filter(({ components }) => components.includes(id)).map((system) => system.id);
  /** A system a part belongs to comes before those whose sheets only lead past it. */
  const inOrder = (own: readonly string[], found: readonly string[]) => [...new Set([...own, ...found])];
  const connectorsOf = (id: string) => document.connectors.filter(({ component }) => component === id);
  const paths = pathsOf(document);
  const entries: IndexEntry[] = [
    ...document.components.map((part): IndexEntry => {
      const plugs = connectorsOf(part.id).map(({ id }) => `${id}.`);
      return {
        ...named(part, "component"),
        systems: inOrder(
          ownSystem(part.id),
          systemsAt((end) => end.startsWith(`${part.id}:`) || plugs.some((plug) => end.startsWith(plug))),
        ),
        words:
          part.kind === "module" ? part.terminals.map((one) => `${one.name} ${one.function}`).join(" ") : "",
      };
    }),
    ...document.connectors.map(
      (connector): IndexEntry => ({
        ...named(connector, "connector"),
        systems: systemsAt((end) => end.startsWith(`${connector.id}.`)),
        words: [
          connector.component ?? "",
          ...connector.cavities.map(({ cavity, terminal }) => `${connector.id}.${cavity} ${terminal ?? ""}`),
        ].join(" "),
      }),
    ),
    ...document.conductors.map(
      (conductor): IndexEntry => ({
        id: conductor.id,
        kind: "conductor",
        title: `${conductor.colour}, ${conductor.squareMillimetres} mm², ${conductor.from} to ${conductor.to}`,
        place: null,
        systems: [...(bySystem.get(conductor.id) ?? [])],
        words: `${conductor.colour} ${colourName(splitColour(conductor.colour))}`,
        ends: [conductor.from, conductor.to],
        path: paths.get(conductor.id) ?? null,
      }),
    ),
    ...document.splices.map(
      (splice): IndexEntry => ({
        ...named({ ...splice, title: splice.title ?? "Splice" }, "splice"),
        systems: systemsAt((end) => end === splice.id),
        words: "",
      }),
    ),
    ...document.groundPoints.map(
      (ground): IndexEntry => ({
        ...named(ground, "ground"),
        systems: systemsAt((end) => end === ground.id),
        words: "ground point",
      }),
    ),
  ];
  return {
    vehicleTitle: document.title,
    systems: document.systems.map(({ id, title }) => ({ id, title })),
    entries,
  };
}

interface Named {
  readonly id: string;
  readonly title: string;
  readonly place?: string | undefined;
}

const named = ({ id, title, place }: Named, kind: IndexEntry["kind"]) => ({
  id,
  kind,
  title,
  place: place ?? null,
  ends: null,
  path: null,
});

/** Which conductors are one path: joined through splices and in-line connectors, not through components or ground. */
function pathsOf(document: VehicleDocument): ReadonlyMap<string, number> {
  const passing = new Set([
    ...document.splices.map(({ id }) => id),
    ...document.connectors
      .filter(({ component }) => component === undefined)
      .flatMap(({ id, cavities }) => cavities.map(({ cavity }) => `${id}.${cavity}`)),
  ]);
  const joint = (end: string) => end.replace(/\/b$/, "");
  const at = new Map<string, string[]>();
  for (const { id, from, to } of document.conductors)
    for (const end of [from, to].map(joint)) if (passing.has(end)) at.set(end, [...(at.get(end) ?? []), id]);
  const ends = new Map(document.conductors.map(({ id, from, to }) => [id, [joint(from), joint(to)]]));
  const paths = new Map<string, number>();
  document.conductors.forEach(({ id }, number) => {
    if (paths.has(id)) return;
    const found = new Set([id]);
    for (const one of found)
      for (const end of ends.get(one) ?? []) for (const next of at.get(end) ?? []) found.add(next);
    for (const one of found) paths.set(one, number);
  });
  return paths;
}
