import { readScanTool } from "@probeworthy/instruments";
import {
  advance,
  type ConditionValues,
  changeState,
  type Fault,
  prepareVehicle,
  settle,
  startState,
  testPoints,
  type VehicleDocument,
  type VehicleState,
} from "@probeworthy/vehicle";

/** Conditions in which two causes are compared: those of the system's terminal chart, at most this many. */
const conditionLimit = 6;

/**
 * Could no test tell these two causes apart? Both cars are put into each condition of the system's terminal chart, and
 * then each connector of the system is unplugged in turn: the voltages at all points a lead can reach, the codes and
 * what can be noticed must agree everywhere. Voltages only: a difference that nothing but an ohms test would show
 * still counts as none.
 */
export function indistinguishable(
  document: VehicleDocument,
  systemId: string,
  one: readonly Fault[],
  other: readonly Fault[],
): boolean {
  return situations(document, systemId).every((situation) => {
    const [left, right] = [picture(document, one, situation), picture(document, other, situation)];
    return left !== null && right !== null && samePicture(left, right);
  });
}

interface Situation {
  readonly conditions: ConditionValues;
  readonly unplug?: string;
}

function situations(document: VehicleDocument, systemId: string): Situation[] {
  const system = document.systems.find(({ id }) => id === systemId);
  const texts = new Set((system?.chart ?? []).map(({ conditions }) => JSON.stringify(conditions)));
  const conditions = [...texts].slice(0, conditionLimit).map((text) => JSON.parse(text) as ConditionValues);
  const connectors = document.connectors.filter(
    ({ component }) => component === undefined || system?.components.includes(component) === true,
  );
  return conditions.flatMap((values) => [
    { conditions: values },
    ...connectors.map(({ id }) => ({ conditions: values, unplug: id })),
  ]);
}

interface Picture {
  readonly volts: ReadonlyMap<string, number>;
  readonly words: string;
}

function picture(document: VehicleDocument, faults: readonly Fault[], situation: Situation): Picture | null {
  const vehicle = prepareVehicle(document, [...faults]);
  if (!vehicle.ok) return null;
  let state = startState(vehicle.value, situation.conditions);
  if (state.ok && situation.unplug !== undefined) {
    state = changeState(vehicle.value, state.value, { unplug: situation.unplug });
  }
  if (!state.ok) return null;
  const aged = advance(vehicle.value, state.value, 10); // codes have matured
  if (!aged.ok) return null;
  return look(document, vehicle.value, aged.value);
}

function look(
  document: VehicleDocument,
  vehicle: Parameters<typeof settle>[0],
  state: VehicleState,
): Picture | null {
  const settled = settle(vehicle, state);
  if (!settled.ok) return null;
  const points = testPoints(vehicle, state).filter(({ accessible }) => accessible);
  const codes = document.components.flatMap((part) => {
    if (part.kind !== "module") return [];
    const answer = readScanTool(vehicle, state, part.id);
    return answer.ok && answer.value.ok
      ? [part.id, ...answer.value.codes.map(({ code }) => code).sort()]
      : [`${part.id} silent`];
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
