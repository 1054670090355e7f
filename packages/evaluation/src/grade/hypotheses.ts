import type { Fault, VehicleDocument } from "@probeworthy/vehicle";
import type { AttemptContext } from "../context";
import { representatives } from "../drawn-number";
import { concreteFault } from "../variant";
import { partHypotheses } from "./part-hypotheses";
import { groupOf } from "./repair-group";
import { seriesChains } from "./series-chains";

/**
 * One way the car could be. `cars` holds one set of faults, or two: the ends of a stretch of severities in between
 * which the true one may lie, so that no cause is ruled out only because its severity was not on the grid.
 */
export interface Hypothesis {
  readonly group: string;
  readonly cars: readonly [readonly Fault[]] | readonly [readonly Fault[], readonly Fault[]];
}

/** Least added resistance that is tried where a conductor, terminal or ground may be poor, Ω; the other end is open. */
const leastOhms = 0.2;

/** Upper limit of hypotheses weighed for one grade; the scenario's own come first and are never cut. */
export const hypothesisLimit = 700;

/**
 * What might be wrong, before anything is measured: the true faults, every candidate of the scenario over its range,
 * nothing at all, and every single fault that is plausible in the system: opens and added resistance in its
 * conductors, terminals and grounds, shorts to ground of its conductors, its fuses, and what fails inside its parts.
 */
export function hypothesesFor(context: AttemptContext): readonly Hypothesis[] {
  const { scenario, document, variant } = context;
  const list: Hypothesis[] = [];
  const seen = new Set<string>();
  const add = (group: string, ...cars: [readonly Fault[]] | [readonly Fault[], readonly Fault[]]) => {
    const key = JSON.stringify([group, cars]);
    if (seen.has(key)) return;
    seen.add(key);
    list.push({ group, cars });
  };
  add(groupOf(variant.faults, variant.normal, document), variant.faults);
  for (const entry of scenario.pool) {
    for (const cars of carsOfEntry(entry)) add(groupOf(cars[0], entry.normal ?? false, document), ...cars);
  }
  add(groupOf([], true, document), []);
  for (const places of plausible(document, scenario.system, likenessOf(context))) {
    if (list.length >= hypothesisLimit) break;
    for (const cars of places) add(groupOf(cars[0], false, document), ...cars);
  }
  return list;
}

type Cars = [readonly Fault[]] | [readonly Fault[], readonly Fault[]];

/** The entry's faults with all their ranges moved together from end to end. */
function carsOfEntry(entry: AttemptContext["scenario"]["pool"][number]): Cars[] {
  const stages = [0, 1, 2].map((stage) =>
    entry.faults.flatMap((template) => {
      const fault = concreteFault(template, (_field, range) => {
        const values = representatives(range);
        return values[Math.min(stage, values.length - 1)] ?? Number.NaN;
      });
      return fault.ok ? [fault.value] : [];
    }),
  );
  const [from = [], middle = [], to = []] = stages;
  const ranges = entry.faults.some((template) => Object.values(template).some((v) => typeof v === "object"));
  return ranges
    ? [
        [from, middle],
        [middle, to],
      ]
    : [[from]];
}

/**
 * Open, or poor by any amount from `leastOhms` up (halved further where it seems to fit); and poor just as the true
 * fault is, and as the scenario's candidates in the same line are: the likeliest mistake is the right fault seen one
 * place too far along the line.
 */
function poor(at: string, like: Likeness): Cars[] {
  const open: Fault = { kind: "open", at };
  const by = (ohms: number): Fault => ({ kind: "seriesResistance", at, ohms });
  return [[[open]], ...like.resistances(at).map((cars): Cars => moved(cars, by)), [[by(leastOhms)], [open]]];
}

function moved(ohms: readonly number[], by: (ohms: number) => Fault): Cars {
  const [from = leastOhms, to] = ohms;
  return to === undefined ? [[by(from)]] : [[by(from)], [by(to)]];
}

/** Severities worth trying at a place because the scenario has them elsewhere. */
interface Likeness {
  /** One figure, or the ends of a stretch. */
  resistances(place: string): readonly (readonly number[])[];
  readonly shorts: readonly number[];
}

function likenessOf({ scenario, document, variant }: AttemptContext): Likeness {
  const lineOf = seriesChains(document, new Set());
  const trueOhms = variant.faults.flatMap((fault) =>
    fault.kind === "seriesResistance" ? [[fault.ohms]] : [],
  );
  const inScenario = scenario.pool.flatMap((entry) =>
    entry.faults.flatMap((template) => {
      const { kind, at, ohms } = template;
      if (
        kind !== "seriesResistance" ||
        typeof at !== "string" ||
        ohms === undefined ||
        typeof ohms === "string"
      ) {
        return [];
      }
      const [from = Number.NaN, middle, to] = representatives(ohms);
      const stretches =
        middle === undefined || to === undefined
          ? [[from]]
          : [
              [from, middle],
              [middle, to],
            ];
      return stretches.map((stretch) => ({ line: lineOf(at), stretch }));
    }),
  );
  return {
    resistances: (place) => [
      ...trueOhms,
      ...inScenario.flatMap(({ line, stretch }) => (line === lineOf(place) ? [stretch] : [])),
    ],
    shorts: variant.faults.flatMap((fault) => (fault.kind === "shortToGround" ? [fault.ohms] : [])),
  };
}

/** The conductor rubbed through to ground, told by the point at one of its cavities. */
function shorted(ends: readonly string[], like: Likeness): Cars[] {
  const end = ends.find((candidate) => candidate.includes("."));
  if (end === undefined) return [];
  const at = end.endsWith("/b") ? `${end.slice(0, -2)}:b` : `${end}:h`;
  const by = (ohms: number): readonly Fault[] => [{ kind: "shortToGround", at, ohms }];
  return [...like.shorts.map((ohms): Cars => [by(ohms)]), [by(0.02), by(0.5)]];
}

/**
 * The system's conductors: those from which every end leads, over joints, to a part of the system or to ground. Branches
 * that end at other parts (an accessory socket on the same splice) are left out.
 */
export function conductorsOf(
  document: VehicleDocument,
  members: ReadonlySet<string>,
): VehicleDocument["conductors"] {
  const partAt = (end: string): string | undefined => {
    if (end.includes(":")) return end.split(":")[0];
    const connector = document.connectors.find(({ id }) => end.startsWith(`${id}.`));
    return connector?.component;
  };
  let kept = document.conductors;
  for (;;) {
    const left = kept.filter(({ from, to }) =>
      [from, to].every((end) => {
        const part = partAt(end);
        if (part !== undefined) return members.has(part);
        if (document.groundPoints.some(({ id }) => id === end)) return true;
        const joint = end.replace("/b", "");
        return (
          kept.filter((other) => [other.from, other.to].some((one) => one.replace("/b", "") === joint))
            .length > 1
        );
      }),
    );
    if (left.length === kept.length) return left;
    kept = left;
  }
}

/** Plausible single faults, one list per place, the places a mechanic would think of first coming first. */
function plausible(document: VehicleDocument, systemId: string, like: Likeness): Hypothesis["cars"][][] {
  const system = document.systems.find(({ id }) => id === systemId);
  const members = new Set<string>(system?.components ?? []);
  const connectors = document.connectors.filter(
    ({ component }) => component !== undefined && members.has(component),
  );
  const near = conductorsOf(document, members);
  const grounds = document.groundPoints.filter(({ id }) =>
    near.some(({ from, to }) => from === id || to === id),
  );
  const fuses = document.components.filter(
    ({ id, kind }) =>
      kind === "fuse" &&
      (members.has(id) || near.some(({ from, to }) => [from, to].some((end) => end.startsWith(`${id}:`)))),
  );
  const wired = new Set([
    ...near.flatMap(({ from, to }) => [from, to]),
    ...connectors.flatMap(({ id, component, cavities }) =>
      cavities
        .filter(({ cavity }) =>
          near.some(({ from, to }) => [from, to].some((end) => end === `${id}.${cavity}`)),
        )
        .map(({ terminal }) => `${component}:${terminal}`),
    ),
  ]);
  return [
    ...fuses.map(({ id }): Cars[] => [[[{ kind: "fuseBlown", component: id }]]]),
    ...near.map(({ id }) => poor(id, like)),
    ...near.map((wire) => shorted([wire.from, wire.to], like)),
    ...grounds.map(({ id }) => poor(id, like)),
    ...partHypotheses(document, members, wired),
    ...connectors.flatMap((connector) =>
      connector.cavities
        .filter(({ cavity }) =>
          near.some(({ from, to }) => [from, to].some((end) => end === `${connector.id}.${cavity}`)),
        )
        .map(({ cavity }) => poor(`${connector.id}.${cavity}`, like)),
    ),
  ];
}
