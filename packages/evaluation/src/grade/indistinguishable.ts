import {
  advance,
  type ConditionValues,
  changeState,
  type Fault,
  ok,
  type PreparedVehicle,
  prepareVehicle,
  settle,
  startState,
  statusBit,
  testPoints,
  type VehicleDocument,
  type VehicleState,
} from "@probeworthy/vehicle";
import { conductorsOf } from "./hypotheses";
import type { Steps } from "./progress";

/** Conditions in which two causes are compared: those of the system's terminal chart, at most this many. */
const conditionLimit = 6;

/**
 * Could no test tell these two causes apart? Both cars are put into each condition of the system's terminal chart, and
 * then each connector of the system is unplugged in turn: the voltages at all points a lead can reach, the codes and
 * what can be noticed must agree everywhere. Voltages only: a difference that nothing but an ohms test would show
 * still counts as none.
 */
export function* indistinguishable(one: ShownCar, other: ShownCar, progress: number): Steps<boolean> {
  for (let situation = 0; situation < one.situations; situation++) {
    const [left, right] = [one.picture(situation), other.picture(situation)];
    if (left === null || right === null || !samePicture(left, right)) return false;
    yield progress;
  }
  return true;
}

/** A car in every situation in which causes are compared; each is worked out when it is first asked for. */
export interface ShownCar {
  readonly situations: number;
  /** Null where the car has no solution. */
  picture(situation: number): Picture | null;
}

export function showCar(document: VehicleDocument, systemId: string, faults: readonly Fault[]): ShownCar {
  const list = situations(document, systemId);
  const vehicle = prepareVehicle(document, [...faults]);
  const pictures = new Map<number, Picture | null>();
  // Every connector is unplugged from the car as it stands in a condition.
  const started = new Map<ConditionValues, ReturnType<typeof startState>>();
  return {
    situations: list.length,
    picture: (position) => {
      const known = pictures.get(position);
      if (known !== undefined) return known;
      const situation = list[position];
      if (!vehicle.ok || situation === undefined) return null;
      const state = started.get(situation.conditions) ?? startState(vehicle.value, situation.conditions);
      started.set(situation.conditions, state);
      const picture = state.ok
        ? pictureOf(document, systemId, vehicle.value, state.value, situation.unplug)
        : null;
      pictures.set(position, picture);
      return picture;
    },
  };
}

interface Situation {
  readonly conditions: ConditionValues;
  readonly unplug?: string;
}

function situations(document: VehicleDocument, systemId: string): Situation[] {
  const system = document.systems.find(({ id }) => id === systemId);
  const texts = new Set((system?.chart ?? []).map(({ conditions }) => JSON.stringify(conditions)));
  const conditions = [...texts].slice(0, conditionLimit).map((text) => JSON.parse(text) as ConditionValues);
  const members = new Set<string>(system?.components ?? []);
  const own = conductorsOf(document, members);
  const connectors = document.connectors.filter(({ id, component }) =>
    component === undefined
      ? own.some(({ from, to }) => [from, to].some((end) => end.startsWith(`${id}.`)))
      : members.has(component),
  );
  // What is seen with everything plugged is the cheaper half and tells most causes apart.
  return [
    ...conditions.map((values) => ({ conditions: values })),
    ...conditions.flatMap((values) => connectors.map(({ id }) => ({ conditions: values, unplug: id }))),
  ];
}

/** Status bit with which a tool shows a code. */
const shownBit = statusBit.testFailedSinceLastClear;

interface Picture {
  readonly volts: ReadonlyMap<string, number>;
  readonly words: string;
}

function pictureOf(
  document: VehicleDocument,
  systemId: string,
  vehicle: PreparedVehicle,
  started: VehicleState,
  unplug: string | undefined,
): Picture | null {
  const state = unplug === undefined ? ok(started) : changeState(vehicle, started, { unplug });
  if (!state.ok) return null;
  const aged = advance(vehicle, state.value, 10); // codes have matured
  return aged.ok ? look(document, systemId, vehicle, aged.value) : null;
}

function look(
  document: VehicleDocument,
  systemId: string,
  vehicle: PreparedVehicle,
  state: VehicleState,
): Picture | null {
  const settled = settle(vehicle, state);
  if (!settled.ok) return null;
  const points = testPoints(vehicle, state).filter(({ accessible }) => accessible);
  const members = document.systems.find(({ id }) => id === systemId)?.components ?? [];
  const codes = members.flatMap((id) => {
    const memory = state.slow.modules[id];
    const module = settled.value.modules[id];
    if (memory === undefined || module === undefined) return [];
    const stored = Object.entries(memory.status).filter(([, status]) => (status & shownBit) !== 0);
    // Whom a module hears is whether the bus works; the tool hangs on the same bus.
    const talks = module.powered && module.asleep !== true;
    return [[id, talks, talks ? module.heard : {}, stored.map(([code]) => code).sort()]];
  });
  return {
    volts: new Map(points.map(({ id }) => [id, settled.value.volts(id)])),
    words: JSON.stringify([codes, settled.value.symptoms.map(({ text }) => text)]),
  };
}

/** Within 2 % and 10 mV: what separates two cars of one kind. */
function samePicture(left: Picture, right: Picture): boolean {
  if (left.words !== right.words) return false;
  return [...left.volts].every(([point, volts]) => {
    const other = right.volts.get(point) ?? Number.NaN;
    return Math.abs(volts - other) <= 0.02 * Math.abs(volts) + 0.01;
  });
}
