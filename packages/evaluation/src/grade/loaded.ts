import { settle, startState, type VehicleDocument } from "@probeworthy/vehicle";
import { prepared } from "../context";
import type { AttemptEvent } from "../event";
import { harnessEnd } from "./log-points";

/** Current from which a circuit counts as loaded, A: a control module awake draws more. Our own figure. */
const loadAmps = 0.05;

/**
 * Whether the circuit of a logged reading would carry its load in a healthy car standing as the log says: same
 * condition, same connectors and fuses. A voltage at an unplugged connector is never loaded, whatever it shows.
 */
export function loadedIn(document: VehicleDocument): (event: AttemptEvent) => boolean {
  const vehicle = prepared(document, []);
  const known = new Map<string, (wire: string) => number>();
  return ({ observation }) => {
    if (observation.kind !== "reading") return false;
    const { context, red, black } = observation;
    const wires = document.conductors.filter(({ from, to }) =>
      [from, to].some((end) => [red, black].some((point) => harnessEnd(point) === end)),
    );
    const key = JSON.stringify(context);
    let amps = known.get(key);
    if (amps === undefined) {
      const state = startState(vehicle, context.conditions);
      if (!state.ok) return false;
      const settled = settle(vehicle, {
        ...state.value,
        unplugged: context.unplugged,
        pulledFuses: context.pulledFuses,
      });
      if (!settled.ok) return false;
      amps = (wire) => Math.abs(settled.value.amps(wire));
      known.set(key, amps);
    }
    const current = amps;
    return wires.some(({ id }) => current(id) >= loadAmps) || fuseCarries(document, [red, black], current);
  };
}

function fuseCarries(
  document: VehicleDocument,
  points: readonly string[],
  amps: (id: string) => number,
): boolean {
  return document.components.some(
    ({ id, kind }) =>
      kind === "fuse" && points.some((point) => point.split(":")[0] === id) && amps(id) >= loadAmps,
  );
}
