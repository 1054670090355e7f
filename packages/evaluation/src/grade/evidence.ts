import type { Fault, VehicleDocument } from "@probeworthy/vehicle";
import type { AttemptContext } from "../context";
import type { AttemptEvent, Observation } from "../event";
import { codesAgree, liveDataAgrees, noticedAgrees, readingAgrees } from "./agreement";
import { type CarPlayer, createCarPlayer } from "./car-player";
import { createHealthyTrack, type HealthyTrack } from "./healthy-track";
import { type Hypothesis, hypothesesFor } from "./hypotheses";
import type { Steps } from "./progress";
import { groupOf } from "./repair-group";
import { halfway } from "./severity";
import { type StandIn, standIns } from "./stand-ins";

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
  /** One way of having each rival cause that still stands, for a closer comparison. */
  readonly survivors: readonly Hypothesis[];
}

/**
 * What the log proves: every candidate's car is taken through the logged commands, and a candidate falls at the first
 * line that its car would not have shown. Starts from the logged readings alone; the learner's car is not simulated.
 * The true group stands by definition, for the log came from it.
 */
export function* weighEvidence(context: AttemptContext, events: readonly AttemptEvent[]): Steps<Evidence> {
  const hypotheses = hypothesesFor(context);
  const groups = [...new Set(hypotheses.map(({ group }) => group))];
  const truth = groupOf(context.variant.faults, context.variant.normal, context.document);
  const worked = events.filter(({ command }) => command.type !== "submitReport");
  const play: Play = {
    document: context.document,
    events: worked,
    standIn: yield* standIns(context.document, worked),
    healthy: createCarPlayer(context.document, [], worked),
    track: createHealthyTrack(context.document, worked),
    known: new Map(),
  };
  const survivors: Hypothesis[] = [];
  const falls = new Map<string, number>();
  for (const [position, group] of groups.entries()) {
    if (group === truth) continue;
    const ways = hypotheses.filter((hypothesis) => hypothesis.group === group);
    const fate = yield* fateOf(ways, play, position / groups.length);
    if (typeof fate === "number") falls.set(group, fate);
    else survivors.push(fate);
  }
  const steps = worked.filter(showsTheCar).map(({ sequence }) => ({
    line: sequence,
    standing: groups.filter((group) => (falls.get(group) ?? Number.POSITIVE_INFINITY) > sequence),
    ruledOut: groups.filter((group) => falls.get(group) === sequence),
  }));
  return { groups, truth, steps, standing: steps.at(-1)?.standing ?? groups, survivors };
}

const showsTheCar = ({ observation }: AttemptEvent): boolean =>
  observation.kind !== "bench" && observation.kind !== "submitted";

/** What playing the candidates takes. */
interface Play {
  readonly document: VehicleDocument;
  readonly events: readonly AttemptEvent[];
  readonly standIn: StandIn;
  readonly healthy: CarPlayer;
  readonly track: HealthyTrack;
  /** Fates by the cars of a hypothesis; null where they stand. Places that share stand-ins share theirs. */
  readonly known: Map<string, number | null>;
}

/** How often a stretch of severities that seems to fit is halved before it is given the benefit of the doubt. */
const halvings = 4;

/** The line at which the last way of having this cause falls, or a way that stands to the end. */
function* fateOf(
  hypotheses: readonly Hypothesis[],
  play: Play,
  progress: number,
): Steps<number | Hypothesis> {
  const { document, events, standIn, healthy, track, known } = play;
  const players = new Map<string, CarPlayer>();
  const playerOf = (original: readonly Fault[]): CarPlayer => {
    const faults = standIn(original);
    if (faults.length === 0) return healthy;
    const key = JSON.stringify(faults);
    const player = players.get(key) ?? createCarPlayer(document, faults, events, track);
    players.set(key, player);
    return player;
  };
  /** Index of the first line these cars do not explain together, or null. */
  function* fallOf(...cars: (readonly Fault[])[]): Steps<number | null> {
    const played = cars.map(playerOf);
    for (const [index, event] of events.entries()) {
      if (!(yield* explains(event, played, index, progress))) return index;
    }
    return null;
  }
  function* fate(cars: Hypothesis["cars"], depth: number): Steps<number | null> {
    const together = yield* fallOf(...cars);
    const [from, to] = cars;
    if (together !== null || to === undefined) return together;
    // Together they allow for one end at one line and the other end at another: look closer.
    const ends = [yield* fallOf(from), yield* fallOf(to)];
    if (ends.includes(null)) return null;
    const middle = depth === 0 ? null : halfway(from, to);
    if (middle === null) return null;
    const halves = [yield* fate([from, middle], depth - 1), yield* fate([middle, to], depth - 1)];
    return halves.includes(null) ? null : Math.max(...halves.map((half) => half ?? 0));
  }
  let last = 0;
  for (const hypothesis of hypotheses) {
    const key = JSON.stringify(hypothesis.cars.map(standIn));
    const before = known.get(key);
    const fall = before === undefined ? yield* fate(hypothesis.cars, halvings) : before;
    known.set(key, fall);
    if (fall === null) return hypothesis;
    last = Math.max(last, fall);
  }
  return events[last]?.sequence ?? 0;
}

function* explains(
  event: AttemptEvent,
  cars: readonly CarPlayer[],
  index: number,
  progress: number,
): Steps<boolean> {
  const predicted: Observation[] = [];
  for (const car of cars) {
    const line = car(index);
    yield progress;
    if (line === "no_such_car") return false;
    if (line === null) return true;
    predicted.push(line);
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
