import { type Fault, settle, startState, type VehicleDocument } from "@probeworthy/vehicle";
import { prepared } from "../context";
import type { AttemptEvent } from "../event";
import { probedEnds } from "./log-points";
import type { Steps } from "./progress";
import { repairPlace } from "./repair-group";
import { seriesChains } from "./series-chains";

/** From faults to those that are simulated in their stead. */
export type StandIn = (faults: readonly Fault[]) => readonly Fault[];

/** An added resistance that would drop less than this in every logged condition is not there, V. */
const negligibleVolts = 0.005;

/**
 * Gives each candidate's faults the faults that are simulated in their stead because no line of this log could tell
 * the two apart: places of one unbranched line share one simulation, and a resistance too small for the current it
 * carries counts as none. Halves the cost of a grade and more.
 */
export function* standIns(document: VehicleDocument, events: readonly AttemptEvent[]): Steps<StandIn> {
  const probed = probedEnds(events);
  const leaderOf = seriesChains(document, probed);
  // A short sits on one side of a connector that was taken apart.
  const apart = new Set(
    events.flatMap(({ command }) => (command.type === "unplug" ? [command.connector] : [])),
  );
  const faces = document.connectors
    .filter(({ id }) => apart.has(id))
    .flatMap(({ id, cavities }) =>
      cavities.flatMap(({ cavity }) => [`${id}.${cavity}`, `${id}.${cavity}/b`]),
    );
  const sideOf = seriesChains(document, new Set([...probed, ...faces]));
  const shortAt = new Map<string, string>();
  const currents = yield* largestCurrents(document, events);
  return (faults: readonly Fault[]) =>
    faults.flatMap((fault): Fault[] => {
      switch (fault.kind) {
        case "open":
          return [{ ...fault, at: leaderOf(fault.at) }];
        case "seriesResistance": {
          const amps = Math.max(
            ...lineOf(document, fault.at, leaderOf).map((wire) => currents.get(wire) ?? 0),
            0,
          );
          const known = document.conductors.some(({ id }) => leaderOf(id) === leaderOf(fault.at));
          if (known && amps * fault.ohms < negligibleVolts) return [];
          return [{ ...fault, at: leaderOf(fault.at) }];
        }
        case "shortToGround": {
          const side = sideOf(repairPlace(fault, document) ?? fault.at);
          const at = shortAt.get(side) ?? fault.at;
          shortAt.set(side, at);
          return [{ ...fault, at }];
        }
        default:
          return [fault];
      }
    });
}

const lineOf = (document: VehicleDocument, place: string, leaderOf: (place: string) => string): string[] =>
  document.conductors.flatMap(({ id }) => (leaderOf(id) === leaderOf(place) ? [id] : []));

/** Largest current of each conductor of a healthy car over the conditions of the log, A. */
function* largestCurrents(
  document: VehicleDocument,
  events: readonly AttemptEvent[],
): Steps<ReadonlyMap<string, number>> {
  const vehicle = prepared(document, []);
  const largest = new Map<string, number>();
  const contexts = new Map(
    events.flatMap(({ observation }) =>
      "context" in observation ? [[JSON.stringify(observation.context), observation.context] as const] : [],
    ),
  );
  for (const { conditions, unplugged, pulledFuses } of contexts.values()) {
    yield 0;
    const state = startState(vehicle, conditions);
    if (!state.ok) continue;
    const settled = settle(vehicle, { ...state.value, unplugged, pulledFuses });
    if (!settled.ok) continue;
    for (const { id } of document.conductors) {
      largest.set(id, Math.max(largest.get(id) ?? 0, Math.abs(settled.value.amps(id))));
    }
  }
  return largest;
}
