import type { MeterFunction, Reading } from "@probeworthy/instruments";
import type { ConditionValues, SlowState, VehicleState } from "@probeworthy/vehicle";
import type { Report } from "./command";
import type { AttemptEvent, World } from "./event";

export type Lead = "red" | "black";
export type Noticed = readonly { readonly id: string; readonly title: string; readonly text: string }[];

/** Where an attempt stands: what the learner has set up, what the car remembers (`world`, secret), what was used up. */
export interface AttemptState {
  readonly status: "open" | "submitted";
  readonly sequence: number;
  readonly elapsedSeconds: number;
  /** Commands carried out; the report does not count. */
  readonly actions: number;
  readonly conditions: ConditionValues;
  readonly unplugged: readonly string[];
  readonly pulledFuses: readonly string[];
  readonly leads: Readonly<Record<Lead, string | null>>;
  readonly function: MeterFunction;
  readonly noticed: Noticed;
  readonly slip: { readonly sequence: number; readonly reading: Reading; readonly current: boolean } | null;
  readonly report: Report | null;
  readonly world: { readonly slow: SlowState; readonly meterFuse: World["meterFuse"] };
}

const beforeHandOver: AttemptState = {
  status: "open",
  sequence: 0,
  elapsedSeconds: 0,
  actions: 0,
  conditions: {},
  unplugged: [],
  pulledFuses: [],
  leads: { red: null, black: null },
  function: "volts",
  noticed: [],
  slip: null,
  report: null,
  world: { slow: { seconds: 0, motors: {}, charge: {}, blownFuses: [], modules: {} }, meterFuse: "good" },
};

/** Commands after which the last reading would no longer come out as it did. */
const changing: ReadonlySet<string> = new Set([
  "setConditions",
  "unplug",
  "plug",
  "pullFuse",
  "fitFuse",
  "placeLead",
  "liftLead",
  "selectFunction",
  "replaceMeterFuse",
  "wait",
  "clearCodes",
]);

/**
 * The state after one more line of the log. Reads nothing but the line: no car is simulated.
 * Throws on a line out of order; a stored log is checked with `checkLog` first.
 */
export function evolve(state: AttemptState | null, event: AttemptEvent): AttemptState {
  const before = state ?? beforeHandOver;
  if (event.sequence !== before.sequence + 1) {
    throw new Error(`line ${event.sequence} follows line ${before.sequence} of the log`);
  }
  const { command, observation } = event;
  const context = "context" in observation ? observation.context : before;
  const submitted = command.type === "submitReport";
  return {
    status: submitted ? "submitted" : before.status,
    sequence: event.sequence,
    elapsedSeconds: event.elapsedSeconds,
    actions: before.actions + (command.type === "open" || submitted ? 0 : 1),
    conditions: context.conditions,
    unplugged: context.unplugged,
    pulledFuses: context.pulledFuses,
    leads: leadsAfter(before.leads, event),
    function: command.type === "selectFunction" ? command.function : before.function,
    noticed: "items" in observation ? observation.items : before.noticed,
    slip: slipAfter(before.slip, event),
    report: submitted ? command.report : before.report,
    // The slow state is written by this package and stored as plain data; the schema leaves its shape to the vehicle.
    world: { slow: event.world.slow as SlowState, meterFuse: event.world.meterFuse },
  };
}

function leadsAfter(
  leads: AttemptState["leads"],
  { command, observation }: AttemptEvent,
): AttemptState["leads"] {
  if (command.type === "placeLead") return { ...leads, [command.lead]: command.point };
  if (command.type === "liftLead") return { ...leads, [command.lead]: null };
  const lifted = "lifted" in observation ? (observation.lifted ?? []) : [];
  return {
    red: lifted.includes("red") ? null : leads.red,
    black: lifted.includes("black") ? null : leads.black,
  };
}

function slipAfter(slip: AttemptState["slip"], event: AttemptEvent): AttemptState["slip"] {
  if (event.observation.kind === "reading") {
    return { sequence: event.sequence, reading: event.observation.reading, current: true };
  }
  return slip !== null && changing.has(event.command.type) ? { ...slip, current: false } : slip;
}

/** The state after a whole log. Throws on an empty or damaged one. */
export function replay(events: readonly AttemptEvent[]): AttemptState {
  let state: AttemptState | null = null;
  for (const event of events) state = evolve(state, event);
  if (state === null) throw new Error("a log has at least the line of the hand-over");
  return state;
}

/** The car as the vehicle package wants it. */
export const carOf = (state: AttemptState): VehicleState => ({
  conditions: state.conditions,
  unplugged: state.unplugged,
  pulledFuses: state.pulledFuses,
  slow: state.world.slow,
});
