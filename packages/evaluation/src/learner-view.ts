import { type ConditionDefinition, type ConditionValues, testPoints } from "@probeworthy/vehicle";
import { type AttemptState, carOf } from "./attempt-state";
import { type AttemptContext, learnersCar } from "./context";
import { heldBy } from "./decide/set-conditions";
import type { AttemptEvent } from "./event";
import { reportPlaces } from "./places";
import { type LearnerView, learnerViewSchema } from "./view";

/**
 * What the learner's browser may know, named piece by piece and checked by the strict schema. The world of an event
 * stays behind; an observation was made to be seen.
 */
export function learnerView(
  context: AttemptContext,
  state: AttemptState,
  events: readonly AttemptEvent[],
): LearnerView {
  const { scenario, document, variant } = context;
  const view: LearnerView = {
    status: state.status,
    sequence: state.sequence,
    job: {
      title: scenario.title,
      complaint: variant.complaint,
      vehicleTitle: document.title,
      system: scenario.system,
      systemTitle: document.systems.find(({ id }) => id === scenario.system)?.title ?? scenario.system,
    },
    limits: {
      shopSeconds: state.elapsedSeconds,
      shopSecondsAllowed: scenario.limits.shopMinutes * 60,
      actions: state.actions,
      actionsAllowed: scenario.limits.actions,
    },
    instruments: [...scenario.instruments],
    requirePrediction: scenario.requirePrediction,
    conditions: document.conditions.map((condition) =>
      conditionView(condition, document.conditions, state.conditions),
    ),
    bench: {
      unplugged: [...state.unplugged],
      pulledFuses: [...state.pulledFuses],
      red: state.leads.red,
      black: state.leads.black,
      function: state.function,
    },
    noticed: state.noticed.map(({ id, title, text }) => ({ id, title, text })),
    slip: state.slip === null ? null : { ...state.slip },
    points: testPoints(learnersCar(context), carOf(state)).map(
      ({ id, title, owner, conductor, accessible, reason }) => ({
        id,
        title,
        owner,
        ...(conductor === undefined ? {} : { conductor }),
        accessible,
        ...(reason === undefined ? {} : { reason }),
      }),
    ),
    connectors: document.connectors.map(({ id, title, place }) => ({
      id,
      title,
      ...(place === undefined ? {} : { place }),
    })),
    fuses: document.components.flatMap((part) =>
      part.kind === "fuse" ? [{ id: part.id, title: part.title, ratingAmps: part.ratingAmps }] : [],
    ),
    modules: document.components.flatMap((part) =>
      part.kind === "module" ? [{ id: part.id, title: part.title }] : [],
    ),
    places: reportPlaces(document).map(({ id, title, group }) => ({ id, title, group })),
    log: events.map(({ sequence, elapsedSeconds, command, observation }) => ({
      sequence,
      elapsedSeconds,
      command,
      observation,
    })),
    report: state.report,
  };
  return learnerViewSchema.parse(view);
}

function conditionView(
  condition: ConditionDefinition,
  definitions: readonly ConditionDefinition[],
  values: ConditionValues,
): LearnerView["conditions"][number] {
  const { name, title } = condition;
  const group = condition.group === undefined ? {} : { group: condition.group };
  const value = values[name];
  if (condition.kind === "choice") {
    return {
      kind: "choice",
      name,
      title,
      ...group,
      value: String(value ?? condition.initial),
      options: condition.options.map((option) => ({ value: option.value, title: option.title })),
    };
  }
  const { unit, minimum, maximum, step } = condition;
  const reason = heldBy(condition, definitions, values);
  return {
    kind: "number",
    name,
    title,
    ...group,
    unit,
    value: typeof value === "number" ? value : condition.initial,
    minimum,
    maximum,
    step,
    adjustable: reason === null,
    ...(reason === null ? {} : { reason }),
  };
}
