import {
  type Component,
  type Fault,
  type FaultPlace,
  faultAt,
  faultTable,
  listFaultPlaces,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import type { Hypothesis } from "./hypotheses";

/** Severities of a part's fault as stretches from end to end; a single figure is tried as it is. */
type Stretches = readonly (readonly [number, number])[];

/**
 * Kinds of fault inside parts that are worth a thought whatever the complaint, and how bad they are tried: from what can
 * just be noticed to as bad as they come, so that no stretch holds a sound part. Our own figures; where a part has
 * ratings they are counted in those.
 */
const kinds: Partial<Record<Fault["kind"], (part: Component) => Stretches>> = {
  coilOpen: () => [],
  contactWelded: () => [],
  contactResistive: () => [[0.2, 20]],
  lampOpen: () => [],
  crossFilament: () => [[0.05, 1]],
  wrongBulb: (part) =>
    part.kind === "lamp"
      ? [
          [part.ratedWatts / 5, part.ratedWatts * 0.6],
          [part.ratedWatts * 1.6, part.ratedWatts * 5],
        ]
      : [],
  motorWorn: (part) =>
    part.kind === "motor" ? [[part.windingOhmsAt20 * 0.7, part.windingOhmsAt20 * 10]] : [],
  motorSeized: () => [],
  couplingBroken: () => [],
  sensorStuck: (part) =>
    part.kind === "torqueSensor"
      ? [[2.5, 2.5]]
      : [
          [0.2, 2.5],
          [2.5, 4.8],
        ],
  sensorOffset: () => [
    [0.2, 1],
    [-1, -0.2],
  ],
  sensorShift: (part) => {
    const [least, most] = part.kind === "thermistor" ? [10, 40] : [0.1, 0.4];
    return [
      [least, most],
      [-most, -least],
    ];
  },
  internalOpen: () => [],
  beltSlips: () => [[0, 0.5]],
  alternatorDiodeOpen: () => [],
  regulatorOff: () => [
    [-2, -0.6],
    [0.6, 2.5],
  ],
  driverDead: () => [],
  silentNode: () => [],
  terminatorMissing: () => [],
  terminatorDrifted: () => [
    [20, 60],
    [240, 1000],
  ],
};

/** Parts that are open inside as such; of others an open contact at their plug says the same. */
const openInside: readonly Component["kind"][] = ["switch", "motor", "resistor", "thermistor"];

/**
 * Every plausible single fault inside the parts of a system, one list per place. Of modules only the outputs that a
 * conductor of the system ends at (`wired`, `A5:T12`) count.
 */
export function partHypotheses(
  document: VehicleDocument,
  members: ReadonlySet<string>,
  wired: ReadonlySet<string>,
): Hypothesis["cars"][][] {
  const parts = new Map(document.components.map((part) => [part.id, part]));
  const batteries = document.components.filter(({ id, kind }) => kind === "battery" && members.has(id));
  const lists = Object.entries(kinds).flatMap(([name, stretchesOf]) => {
    const kind = name as Fault["kind"];
    return listFaultPlaces(document, kind).flatMap((place) => {
      const part = parts.get(place.place);
      if (part === undefined || !members.has(part.id) || !counts(kind, part, place, wired)) return [];
      return [carsAt(kind, place, stretchesOf(part))];
    });
  });
  return [...lists, ...batteries.map(({ id }) => [weakBattery(id)])];
}

function counts(
  kind: Fault["kind"],
  part: Component,
  { part: name }: FaultPlace,
  wired: ReadonlySet<string>,
) {
  if (kind === "internalOpen") {
    // A part with two ends is open at either end alike.
    const [first] = part.kind === "switch" ? [name] : ["1"];
    return openInside.includes(part.kind) && name === first && wired.has(`${part.id}:${name}`);
  }
  if (kind !== "driverDead" || part.kind !== "module") return true;
  const output = part.outputs?.find((candidate) => candidate.name === name);
  if (output === undefined) return false;
  const ends = "terminal" in output ? [output.terminal] : [output.plus, output.minus];
  return ends.some((terminal) => wired.has(`${part.id}:${terminal}`));
}

function carsAt(kind: Fault["kind"], place: FaultPlace, stretches: Stretches): Hypothesis["cars"][] {
  if (faultTable[kind].severity === undefined) return [[[faultAt(kind, place)]]];
  return stretches.map(([from, to]): Hypothesis["cars"] =>
    from === to ? [[faultAt(kind, place, from)]] : [[faultAt(kind, place, from)], [faultAt(kind, place, to)]],
  );
}

/** From a battery that is merely low to one that is flat and worn. */
function weakBattery(component: string): Hypothesis["cars"] {
  const weak = (stateOfCharge: number, internalOhmsFactor: number): readonly Fault[] => [
    { kind: "weakBattery", component, stateOfCharge, internalOhmsFactor },
  ];
  return [weak(0.55, 1.2), weak(0.1, 5)];
}
