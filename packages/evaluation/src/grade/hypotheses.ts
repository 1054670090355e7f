import type { Fault, VehicleDocument } from "@probeworthy/vehicle";
import type { AttemptContext } from "../context";
import { representatives } from "../drawn-number";
import { concreteFault } from "../variant";
import { groupOf } from "./repair-group";

/**
 * One way the car could be. `cars` holds one set of faults, or two: the ends of a stretch of severities in between
 * which the true one may lie, so that no cause is ruled out only because its severity was not on the grid.
 */
export interface Hypothesis {
  readonly group: string;
  readonly cars: readonly [readonly Fault[]] | readonly [readonly Fault[], readonly Fault[]];
}

/** Added resistance that is tried where a conductor, terminal or ground may be poor, Ω; above the last one it is open. */
const resistanceGrid = [0.2, 10] as const;

/** Upper limit of hypotheses weighed for one grade; the scenario's own come first and are never cut. */
export const hypothesisLimit = 700;

/**
 * What might be wrong, before anything is measured: the true faults, every candidate of the scenario over its range,
 * nothing at all, and every single fault that is plausible in the system: opens and added resistance in its
 * conductors, terminals and grounds, shorts to ground of its conductors, its fuses and its sensors.
 */
export function hypothesesFor({ scenario, document, variant }: AttemptContext): readonly Hypothesis[] {
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
  for (const places of plausible(document, scenario.system, variant.faults)) {
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
 * Open, or poor by any amount from the grid's first step up; and poor by the very resistance of the true fault, for the
 * likeliest mistake is the right fault seen one place too far along the line.
 */
function poor(at: string, like: readonly Fault[]): Cars[] {
  const open: Fault = { kind: "open", at };
  const steps: Fault[] = [
    ...resistanceGrid.map((ohms): Fault => ({ kind: "seriesResistance", at, ohms })),
    open,
  ];
  return [
    [[open]],
    ...like.flatMap((fault): Cars[] =>
      fault.kind === "seriesResistance" ? [[[{ kind: "seriesResistance", at, ohms: fault.ohms }]]] : [],
    ),
    ...steps.slice(1).flatMap((fault, index): Cars[] => {
      const before = steps[index];
      return before === undefined ? [] : [[[before], [fault]]];
    }),
  ];
}

/** The conductor rubbed through to ground, told by the point at one of its cavities. */
function shorted(ends: readonly string[], like: readonly Fault[]): Cars[] {
  const end = ends.find((candidate) => candidate.includes("."));
  if (end === undefined) return [];
  const at = end.endsWith("/b") ? `${end.slice(0, -2)}:b` : `${end}:h`;
  const by = (ohms: number): readonly Fault[] => [{ kind: "shortToGround", at, ohms }];
  return [
    ...like.flatMap((fault): Cars[] => (fault.kind === "shortToGround" ? [[by(fault.ohms)]] : [])),
    [by(0.02), by(0.5)],
  ];
}

/** Plausible single faults, one list per place, the places a mechanic would think of first coming first. */
function plausible(document: VehicleDocument, systemId: string, like: readonly Fault[]): Cars[][] {
  const system = document.systems.find(({ id }) => id === systemId);
  const members = new Set<string>(system?.components ?? []);
  const connectors = document.connectors.filter(
    ({ component }) => component !== undefined && members.has(component),
  );
  const touches = (end: string) =>
    connectors.some(({ id }) => end.startsWith(`${id}.`)) || members.has(end.split(":")[0] ?? "");
  const direct = document.conductors.filter(({ from, to }) => touches(from) || touches(to));
  // One step further: what these conductors join at in-line connectors, splices and ground points.
  const joints = new Set(direct.flatMap(({ from, to }) => [from, to].map((end) => end.replace("/b", ""))));
  const near = document.conductors.filter(
    (wire) => direct.includes(wire) || [wire.from, wire.to].some((end) => joints.has(end.replace("/b", ""))),
  );
  const grounds = document.groundPoints.filter(({ id }) =>
    near.some(({ from, to }) => from === id || to === id),
  );
  const fuses = document.components.filter(
    ({ id, kind }) =>
      kind === "fuse" &&
      (members.has(id) || near.some(({ from, to }) => [from, to].some((end) => end.startsWith(`${id}:`)))),
  );
  const sensors = document.components.filter(({ id, kind }) => kind === "torqueSensor" && members.has(id));
  return [
    ...fuses.map(({ id }): Cars[] => [[[{ kind: "fuseBlown", component: id }]]]),
    ...near.map(({ id }) => poor(id, like)),
    ...near.map((wire) => shorted([wire.from, wire.to], like)),
    ...grounds.map(({ id }) => poor(id, like)),
    ...sensors.map((sensor): Cars[] => {
      if (sensor.kind !== "torqueSensor") return [];
      return [sensor.terminals.signal1, sensor.terminals.signal2].flatMap((channel): Cars[] => [
        [[{ kind: "sensorStuck", component: sensor.id, channel, volts: 2.5 }]],
        [
          [{ kind: "sensorOffset", component: sensor.id, channel, volts: 0.2 }],
          [{ kind: "sensorOffset", component: sensor.id, channel, volts: 1 }],
        ],
        [
          [{ kind: "sensorOffset", component: sensor.id, channel, volts: -1 }],
          [{ kind: "sensorOffset", component: sensor.id, channel, volts: -0.2 }],
        ],
      ]);
    }),
    ...connectors.flatMap((connector) =>
      connector.cavities
        .filter(({ cavity }) =>
          near.some(({ from, to }) => [from, to].some((end) => end === `${connector.id}.${cavity}`)),
        )
        .map(({ cavity }) => poor(`${connector.id}.${cavity}`, like)),
    ),
  ];
}
