import { type VehicleDocument, vehicleDocumentSchema } from "@probeworthy/vehicle";

type Component = VehicleDocument["components"][number];

/** Parts a feed runs through on its way from the battery. */
const onTheWay: readonly Component["kind"][] = ["battery", "fuse", "switch", "passive"];

/** The joint, cavity or component an end of a conductor belongs to. */
const placeOf = (end: string): string => end.replace(/\/b$/, "").split(":")[0] ?? end;

/**
 * The part of a vehicle that some of its systems need: their components, the way of each feed back to the battery, and the
 * conductors, plugs, splices and ground points in between. Rows of charts and symptoms that speak of what is left out are
 * left out too.
 */
export function takeSystems(
  source: VehicleDocument,
  systemIds: readonly string[],
  { id, title }: { readonly id: string; readonly title: string },
): VehicleDocument {
  const systems = source.systems.filter((system) => systemIds.includes(system.id));
  const kept = new Set(systems.flatMap(({ components }) => components));
  const parents = waysFromBattery(source);
  for (const start of [...kept]) {
    const seen = new Set<string>();
    for (let at = parents.get(start); at !== undefined && !seen.has(at); at = parents.get(at)) {
      seen.add(at);
      if (source.components.some((component) => component.id === at)) kept.add(at);
    }
  }
  const conductors = withoutLooseEnds(source, kept);
  const ends = new Set(conductors.flatMap(({ from, to }) => [placeOf(from), placeOf(to)]));
  const wired = new Set([...ends].map((end) => end.split(".")[0] ?? end));
  const connectors = source.connectors.filter((connector) =>
    connector.component === undefined ? wired.has(connector.id) : kept.has(connector.component),
  );
  const there = new Set([...kept, ...wired, ...connectors.map((connector) => connector.id)]);
  const speaksOfThere = (point: string) => there.has(point.split(/[.:]/)[0] ?? point);
  return vehicleDocumentSchema.parse({
    ...source,
    id,
    title,
    description: `Made from ${source.title}: ${systems.map((system) => system.title).join(", ")}.`,
    components: source.components.filter((component) => kept.has(component.id)),
    connectors,
    conductors,
    splices: source.splices.filter((splice) => wired.has(splice.id)),
    groundPoints: source.groundPoints.filter((ground) => wired.has(ground.id)),
    symptoms: source.symptoms.filter(({ value }) => designatorsIn(value).every((name) => there.has(name))),
    systems: systems.map((system) => ({
      ...system,
      chart: system.chart.filter(
        ({ point, against, unplugged = [] }) =>
          speaksOfThere(point) &&
          (against === undefined || speaksOfThere(against)) &&
          unplugged.every((connector) => there.has(connector)),
      ),
    })),
  } satisfies VehicleDocument);
}

/** For every place that can be reached from the battery, the place before it on the shortest way. */
function waysFromBattery(source: VehicleDocument): Map<string, string> {
  const neighbours = new Map<string, Set<string>>();
  const join = (one: string, other: string) => {
    neighbours.set(one, (neighbours.get(one) ?? new Set()).add(other));
    neighbours.set(other, (neighbours.get(other) ?? new Set()).add(one));
  };
  for (const { from, to } of source.conductors) join(placeOf(from), placeOf(to));
  for (const { id, component, cavities } of source.connectors)
    if (component !== undefined) for (const { cavity } of cavities) join(`${id}.${cavity}`, component);
  const grounds = new Set(source.groundPoints.map(({ id }) => id));
  const kinds = new Map(source.components.map(({ id, kind }) => [id, kind]));
  const parents = new Map<string, string>();
  const queue = source.components.filter(({ kind }) => kind === "battery").map(({ id }) => id);
  const reached = new Set(queue);
  for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
    const kind = kinds.get(at);
    // The way runs through fuses and switches, not through loads, and never by way of the body.
    if (kind !== undefined && !onTheWay.includes(kind)) continue;
    for (const next of neighbours.get(at) ?? []) {
      if (reached.has(next) || grounds.has(next)) continue;
      reached.add(next);
      parents.set(next, at);
      queue.push(next);
    }
  }
  return parents;
}

/** Conductors between what is kept; those that end at a splice or plug nothing else reaches are taken away, again and again. */
function withoutLooseEnds(source: VehicleDocument, kept: ReadonlySet<string>): VehicleDocument["conductors"] {
  const components = new Set(source.components.map(({ id }) => id));
  const plugOf = new Map(source.connectors.map(({ id, component }) => [id, component]));
  const grounds = new Set(source.groundPoints.map(({ id }) => id));
  const isHeld = (place: string): boolean => {
    const owner = place.includes(".") ? plugOf.get(place.split(".")[0] ?? "") : undefined;
    return kept.has(place) || grounds.has(place) || (owner !== undefined && kept.has(owner));
  };
  const isGone = (place: string): boolean => {
    const owner = place.includes(".") ? plugOf.get(place.split(".")[0] ?? "") : undefined;
    return (components.has(place) && !kept.has(place)) || (owner !== undefined && !kept.has(owner));
  };
  let conductors = source.conductors.filter(({ from, to }) => !isGone(placeOf(from)) && !isGone(placeOf(to)));
  for (;;) {
    const degree = new Map<string, number>();
    for (const { from, to } of conductors)
      for (const place of [placeOf(from), placeOf(to)]) degree.set(place, (degree.get(place) ?? 0) + 1);
    const tied = (place: string) => isHeld(place) || (degree.get(place) ?? 0) > 1;
    const left = conductors.filter(({ from, to }) => {
      const [one, other] = [placeOf(from), placeOf(to)];
      const touchesGroundOnly = grounds.has(one) && grounds.has(other);
      return tied(one) && tied(other) && !touchesGroundOnly;
    });
    if (left.length === conductors.length) return withoutIslands(left, isHeldByPart(kept, plugOf));
    conductors = left;
  }
}

const isHeldByPart =
  (kept: ReadonlySet<string>, plugOf: ReadonlyMap<string, string | undefined>) =>
  (place: string): boolean => {
    const owner = place.includes(".") ? plugOf.get(place.split(".")[0] ?? "") : undefined;
    return kept.has(place) || (owner !== undefined && kept.has(owner));
  };

/** Splices joined only with each other or a ground belong to nothing that is kept. */
function withoutIslands(
  conductors: VehicleDocument["conductors"],
  isPart: (place: string) => boolean,
): VehicleDocument["conductors"] {
  const touched = new Set(conductors.flatMap(({ from, to }) => [placeOf(from), placeOf(to)]).filter(isPart));
  for (let grew = true; grew; ) {
    grew = false;
    for (const { from, to } of conductors) {
      const [one, other] = [placeOf(from), placeOf(to)];
      if (touched.has(one) === touched.has(other)) continue;
      touched.add(one).add(other);
      grew = true;
    }
  }
  return conductors.filter(({ from }) => touched.has(placeOf(from)));
}

/** Designators a formula names: `{loadAmps: "E1"}`, `{signal, of: "A1"}`. */
function designatorsIn(value: unknown): string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]: [string, unknown]) =>
    typeof inner === "string"
      ? ["loadAmps", "of", "speedOf", "torqueOf", "pulledIn"].includes(key)
        ? [inner]
        : []
      : designatorsIn(inner),
  );
}
