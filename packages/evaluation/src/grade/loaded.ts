import { type ConditionValues, settle, startState, type VehicleDocument } from "@probeworthy/vehicle";
import { prepared } from "../context";
import type { AttemptEvent } from "../event";
import { harnessEnd } from "./log-points";

/** Current from which a circuit counts as loaded, A: a control module awake draws more. Our own figure. */
const loadAmps = 0.05;

/**
 * Whether the circuit of a logged reading would carry its load in a healthy car standing as the log says: same
 * condition, same connectors and fuses. Battery posts and bare body are what one measures against; every other point
 * must have current in its conductor or fuse. A voltage at an unplugged connector is never loaded, whatever it shows.
 */
export function loadedIn(document: VehicleDocument): (event: AttemptEvent) => boolean {
  const currents = new Map<string, Currents | null>();
  return ({ observation }) => {
    if (observation.kind !== "reading") return false;
    const key = JSON.stringify(observation.context);
    const known = currents.get(key);
    const amps = known === undefined ? currentsIn(document, observation.context) : known;
    currents.set(key, amps);
    if (amps === null) return false;
    const points = [observation.red, observation.black].filter(
      (point) => point.split(":")[1] !== "body" && point !== "body",
    );
    const batteries = document.components.filter(({ kind }) => kind === "battery").map(({ id }) => id);
    const measured = points.filter((point) => !batteries.includes(point.split(":")[0] ?? ""));
    const judged = measured.length === 0 ? points : measured;
    return (
      judged.length > 0 &&
      judged.every((point) => carriers(document, point).some((id) => amps(id) >= loadAmps))
    );
  };
}

type Currents = (id: string) => number;

function currentsIn(
  document: VehicleDocument,
  {
    conditions,
    unplugged,
    pulledFuses,
  }: { conditions: ConditionValues; unplugged: string[]; pulledFuses: string[] },
): Currents | null {
  const vehicle = prepared(document, []);
  const state = startState(vehicle, conditions);
  if (!state.ok) return null;
  const settled = settle(vehicle, { ...state.value, unplugged, pulledFuses });
  return settled.ok ? (id) => Math.abs(settled.value.amps(id)) : null;
}

/** Conductors that end at a point, and the fuse whose socket it is. */
function carriers(document: VehicleDocument, point: string): string[] {
  const end = harnessEnd(point);
  const wires = document.conductors.filter(({ from, to }) => from === end || to === end);
  const fuses = document.components.filter(({ id, kind }) => kind === "fuse" && point.split(":")[0] === id);
  return [...wires, ...fuses].map(({ id }) => id);
}
