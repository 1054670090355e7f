import type { AttemptEvent, Command, Report, ScenarioDocument } from "@probeworthy/evaluation";
import {
  type AttemptContext,
  type AttemptState,
  decide,
  evolve,
  openAttempt,
  type Variant,
} from "@probeworthy/evaluation/server";
import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import type { Fault } from "@probeworthy/vehicle";

export const scenarioNamed = (id: string): ScenarioDocument => {
  const scenario = starterScenarios.find((candidate) => candidate.id === id);
  if (scenario === undefined) throw new Error(`there is no scenario ${id}`);
  return scenario;
};

/** A scenario of the training vehicle with the faults given, instead of drawn. */
export function contextWith(
  scenario: ScenarioDocument,
  faults: Fault[],
  change: Partial<Variant> = {},
): AttemptContext {
  const variant: Variant = {
    format: "probeworthy-variant-1",
    scenario: scenario.id,
    vehicle: trainingVehicle.id,
    seed: "given",
    candidate: "given",
    title: "given",
    normal: false,
    faults,
    complaint: scenario.complaints[0] ?? "",
    conditions: {},
    ...change,
  };
  return { scenario, document: trainingVehicle, variant };
}

export interface Worked {
  readonly context: AttemptContext;
  readonly state: AttemptState;
  readonly events: readonly AttemptEvent[];
}

export function open(context: AttemptContext): Worked {
  const opened = openAttempt(context);
  if (!opened.ok) throw new Error(opened.error.message);
  return { context, ...opened.value };
}

/** Carries the commands out one after the other; a refusal fails the test. */
export function work(from: Worked, ...commands: readonly Command[]): Worked {
  let { state } = from;
  const events = [...from.events];
  for (const command of commands) {
    const decision = decide(from.context, state, command);
    if (!decision.ok) throw new Error(`${JSON.stringify(command)}: ${decision.error.message}`);
    for (const event of decision.value) {
      state = evolve(state, event);
      events.push(event);
    }
  }
  return { context: from.context, state, events };
}

export const refusalOf = (from: Worked, command: Command) => {
  const decision = decide(from.context, from.state, command);
  return decision.ok ? null : decision.error;
};

/** Steps a technician would name. */
export const step = {
  set: (values: Record<string, string | number>): Command => ({ type: "setConditions", values }),
  read: (red: string, black: string): Command[] => [
    { type: "placeLead", lead: "red", point: red },
    { type: "placeLead", lead: "black", point: black },
    { type: "takeReading" },
  ],
  redTo: (point: string): Command[] => [{ type: "placeLead", lead: "red", point }, { type: "takeReading" }],
  codes: (module: string): Command => ({ type: "readCodes", module }),
  submit: (cause: Partial<Report["cause"]>, correction: Partial<Report["correction"]> = {}): Command => ({
    type: "submitReport",
    report: {
      concern: "The concern of the customer is confirmed on the car.",
      cause: {
        kind: "open",
        place: "",
        explanation: "The readings in the log show where it is lost.",
        ...cause,
      },
      correction: { action: "repairTerminal", place: cause.place ?? "", explanation: "", ...correction },
    },
  }),
};

export const lastReading = ({ events }: Worked): string => {
  const event = events.findLast(({ observation }) => observation.kind === "reading");
  if (event?.observation.kind !== "reading") throw new Error("no reading was taken");
  return `${event.observation.reading.display} ${event.observation.reading.unit}`;
};
