import type { Conductor, VehicleDocument } from "../document/vehicle-document";
import { createVehicleIndex, endToPoint, terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import { err, ok, type Result } from "../result";
import { findCopperNets } from "./copper-nets";
import { NeededParts, namedComponents } from "./needed-parts";

export interface ExtractError {
  readonly code: "unknown_system";
  readonly systems: readonly string[];
}

const ownerOf = (place: string): string => place.split(/[.:]/)[0] ?? place;

/**
 * A vehicle with only these systems and what they need: the sources, the fuses, contacts, bars and ground points on the way, the
 * modules that drive or hear them with what those look at, and the conditions and symptoms that speak of what is left. It
 * reads as the whole vehicle does but for what other consumers draw through shared cables. A module kept for another's sake
 * may have bare terminals. Errors: systems that are not there.
 */
export function extractSystem(
  document: VehicleDocument,
  systemIds: readonly string[],
): Result<VehicleDocument, ExtractError> {
  const unknown = systemIds.filter((id) => !document.systems.some((system) => system.id === id));
  if (unknown.length > 0) return err({ code: "unknown_system", systems: unknown });
  const systems = document.systems.filter(({ id }) => systemIds.includes(id));
  const index = createVehicleIndex(document);
  const primary = new Set(systems.flatMap(({ components }) => components));
  const needed = new NeededParts(findCopperNets(document, index), index, primary, document);
  for (;;) {
    const conductors = wiring(document, index, needed.live);
    const bare = bareTerminals(document, index, needed.live, conductors);
    const before = sizeOf(needed.live);
    for (const node of bare) needed.addNet(node);
    if (sizeOf(needed.live) === before) return ok(assemble(document, systems, needed.live, conductors));
  }
}

const sizeOf = (live: ReadonlyMap<string, ReadonlySet<string>>): number =>
  [...live.values()].reduce((sum, { size }) => sum + size, live.size);

/** The conductors between live terminals and ground points, without branches that end nowhere. */
function wiring(
  document: VehicleDocument,
  index: VehicleIndex,
  live: ReadonlyMap<string, ReadonlySet<string>>,
): Conductor[] {
  const isAnchor = (point: string): boolean => {
    if (point.endsWith(":ring")) return true;
    const [id = "", cavity] = point.replace(/:[hb]$/, "").split(".");
    if (cavity === undefined) {
      const [component = "", terminal = ""] = point.split(":");
      return live.get(component)?.has(terminal) ?? false;
    }
    const connector = index.connectors.get(id);
    const terminal = connector?.cavities.find((one) => one.cavity === cavity)?.terminal;
    return (
      connector?.component !== undefined &&
      terminal !== undefined &&
      (live.get(connector.component)?.has(terminal) ?? false)
    );
  };
  // Both faces of an in-line cavity are one place here.
  const place = (end: string): string => {
    const point = endToPoint(end, index.groundPoints);
    return index.connectors.get(ownerOf(end))?.component === undefined ? point.replace(/:[hb]$/, "") : point;
  };
  let conductors: readonly Conductor[] = document.conductors;
  for (;;) {
    const ends = new Map<string, number>();
    for (const { from, to } of conductors)
      for (const end of [place(from), place(to)]) ends.set(end, (ends.get(end) ?? 0) + 1);
    const isHeld = (end: string): boolean => {
      const point = place(end);
      return isAnchor(point) || (ends.get(point) ?? 0) > 1;
    };
    const left = conductors.filter(({ from, to }) => isHeld(from) && isHeld(to));
    if (left.length === conductors.length) return withoutIslands(left, place, isAnchor);
    conductors = left;
  }
}

/** Wires that join nothing live, only bars or grounds with one another, go. */
function withoutIslands(
  conductors: readonly Conductor[],
  place: (end: string) => string,
  isAnchor: (point: string) => boolean,
): Conductor[] {
  const ends = conductors.flatMap(({ from, to }) => [place(from), place(to)]);
  const reached = new Set(ends.filter((point) => isAnchor(point) && !point.endsWith(":ring")));
  for (let before = -1; before !== reached.size; ) {
    before = reached.size;
    for (const { from, to } of conductors)
      if (reached.has(place(from)) || reached.has(place(to))) reached.add(place(from)).add(place(to));
  }
  return conductors.filter(({ from }) => reached.has(place(from)));
}

/** Terminals of kept components that have lost their conductor and may not hang in the air. */
function bareTerminals(
  document: VehicleDocument,
  index: VehicleIndex,
  live: ReadonlyMap<string, ReadonlySet<string>>,
  conductors: readonly Conductor[],
): string[] {
  const nodesOf = (list: readonly Conductor[]): Set<string> =>
    new Set(
      list
        .flatMap(({ from, to }) => [from, to])
        .map((end) => {
          const [id = "", cavity] = end.replace(/\/b$/, "").split(".");
          const connector = cavity === undefined ? undefined : index.connectors.get(id);
          const terminal = connector?.cavities.find((one) => one.cavity === cavity)?.terminal;
          return connector === undefined ? end : `${connector.component}:${terminal}`;
        }),
    );
  const [before, after] = [nodesOf(document.conductors), nodesOf(conductors)];
  return document.components
    .filter(({ id, kind }) => live.has(id) && kind !== "module" && kind !== "switch" && kind !== "passive")
    .flatMap((component) => terminalsOf(component).map((terminal) => `${component.id}:${terminal}`))
    .filter((node) => before.has(node) && !after.has(node));
}

function assemble(
  document: VehicleDocument,
  chosen: VehicleDocument["systems"],
  live: ReadonlyMap<string, ReadonlySet<string>>,
  conductors: Conductor[],
): VehicleDocument {
  const ended = new Set(conductors.flatMap(({ from, to }) => [ownerOf(from), ownerOf(to)]));
  const connectors = document.connectors.filter(({ id, component }) =>
    component === undefined ? ended.has(id) : live.has(component),
  );
  const there = new Set([...live.keys(), ...ended, ...connectors.map(({ id }) => id)]);
  const isThere = (point: string): boolean => point === "body" || there.has(ownerOf(point));
  const systems = chosen.map((system) => ({
    ...system,
    chart: system.chart.filter(
      ({ point, against, unplugged = [] }) =>
        isThere(point) && (against === undefined || isThere(against)) && unplugged.every(isThere),
    ),
  }));
  const parts = {
    components: document.components.filter(({ id }) => live.has(id)),
    connectors,
    conductors,
    splices: document.splices.filter(({ id }) => ended.has(id)),
    groundPoints: document.groundPoints.filter(({ id }) => ended.has(id)),
    symptoms: document.symptoms.filter(({ value }) => namedComponents(value).every((id) => there.has(id))),
    systems,
  };
  const { drawing } = document;
  const placed = Object.fromEntries(
    Object.entries(drawing?.placed ?? {}).filter(([id]) => chosen.some((system) => system.id === id)),
  );
  return {
    ...document,
    description: `From ${document.title}: ${chosen.map(({ title }) => title).join(", ")}.`,
    ...parts,
    conditions: usedConditions(document, parts),
    ...(drawing === undefined ? {} : { drawing: { placed } }),
  };
}

/** Conditions that anything kept names, and those these depend on. */
function usedConditions(document: VehicleDocument, parts: object): VehicleDocument["conditions"] {
  const text = JSON.stringify(parts);
  const used = new Set(
    document.conditions.filter(({ name }) => text.includes(`"${name}"`)).map(({ name }) => name),
  );
  for (const condition of document.conditions)
    if (used.has(condition.name) && condition.kind === "number" && condition.onlyWhen !== undefined)
      used.add(condition.onlyWhen.condition);
  return document.conditions.filter(({ name }) => used.has(name));
}
