import { type PreparedVehicle, prepareVehicle, type VehicleDocument } from "@probeworthy/vehicle";
import type { AttemptContext } from "../context";
import type { AttemptEvent, Observation } from "../event";
import { codesAgree, liveDataAgrees, noticedAgrees, readingAgrees } from "./agreement";
import { type Hypothesis, hypothesesFor } from "./hypotheses";
import { type PlayedCar, playLine } from "./observe-again";
import { groupOf } from "./repair-group";

export interface EvidenceStep {
  readonly line: number;
  /** Repair groups not ruled out after this line, in the order of `groups`. */
  readonly standing: readonly string[];
  /** Groups this line ruled out. */
  readonly ruledOut: readonly string[];
}

export interface Evidence {
  readonly groups: readonly string[];
  readonly truth: string;
  /** One step for each line that shows something of the car. */
  readonly steps: readonly EvidenceStep[];
  readonly standing: readonly string[];
  /** Ways of being wrong that still stand, for a closer comparison. */
  readonly survivors: readonly Hypothesis[];
}

interface Played {
  readonly vehicle: PreparedVehicle;
  car: PlayedCar | null;
  observation: Observation | null;
}

/**
 * What the log proves: every candidate's car is taken through the logged commands, and a candidate falls at the first
 * line that its car would not have shown. Starts from the logged readings alone; the learner's car is not simulated.
 * The true group stands by definition, for the log came from it.
 */
export function weighEvidence(context: AttemptContext, events: readonly AttemptEvent[]): Evidence {
  const hypotheses = hypothesesFor(context);
  const groups = [...new Set(hypotheses.map(({ group }) => group))];
  const truth = groupOf(context.variant.faults, context.variant.normal, context.document);
  let living = [...hypotheses];
  const cars = new Map<string, Played | null>();
  const steps: EvidenceStep[] = [];
  let standing = groups;
  for (const event of events) {
    if (event.command.type === "submitReport") break;
    const needed = new Set(living.flatMap((hypothesis) => hypothesis.cars.map(keyOf)));
    for (const hypothesis of living) {
      for (const faults of hypothesis.cars) {
        const key = keyOf(faults);
        if (needed.delete(key)) cars.set(key, play(context.document, faults, cars.get(key), event));
      }
    }
    if (!showsTheCar(event)) continue;
    living = living.filter((hypothesis) => explains(hypothesis, cars, event));
    const left = new Set(living.map(({ group }) => group)).add(truth);
    const after = groups.filter((group) => left.has(group));
    steps.push({
      line: event.sequence,
      standing: after,
      ruledOut: standing.filter((group) => !left.has(group)),
    });
    standing = after;
  }
  return { groups, truth, steps, standing, survivors: living };
}

const keyOf = (faults: Hypothesis["cars"][0]): string => JSON.stringify(faults);

const showsTheCar = ({ observation }: AttemptEvent): boolean =>
  observation.kind !== "bench" && observation.kind !== "submitted";

function play(
  document: VehicleDocument,
  faults: Hypothesis["cars"][0],
  before: Played | null | undefined,
  event: AttemptEvent,
): Played | null {
  if (before === null) return null;
  let vehicle = before?.vehicle;
  if (vehicle === undefined) {
    const made = prepareVehicle(document, [...faults]);
    if (!made.ok) return null;
    vehicle = made.value;
  }
  const played = playLine(vehicle, before?.car ?? null, event);
  return played === null ? null : { vehicle, car: played.car, observation: played.observation };
}

function explains(
  hypothesis: Hypothesis,
  cars: ReadonlyMap<string, Played | null>,
  event: AttemptEvent,
): boolean {
  const predicted: Observation[] = [];
  for (const faults of hypothesis.cars) {
    const played = cars.get(keyOf(faults));
    if (played === undefined || played === null) return false;
    if (played.observation === null) return true;
    predicted.push(played.observation);
  }
  return agrees(event.observation, predicted);
}

/** Does one observation fit a candidate, given what one or both ends of its stretch would show? */
export function agrees(logged: Observation, predicted: readonly Observation[]): boolean {
  const of = <K extends Observation["kind"]>(kind: K) =>
    predicted.filter((one): one is Extract<Observation, { kind: K }> => one.kind === kind);
  switch (logged.kind) {
    case "noticed":
      return of("noticed").some((one) => noticedAgrees(logged.items, one.items));
    case "fuse":
      return of("fuse").some(
        (one) => one.element === logged.element && noticedAgrees(logged.items, one.items),
      );
    case "reading":
      return readingAgrees(
        logged.reading,
        of("reading").map(({ reading }) => reading),
      );
    case "codes":
      return of("codes").some((one) => codesAgree(logged, one));
    case "liveData":
      return liveDataAgrees(logged, of("liveData"));
    case "bench":
    case "submitted":
      return true;
  }
}
