import type { Prediction } from "../../command";
import type { AttemptEvent } from "../../event";
import { tolerance } from "../agreement";
import { invalidTests } from "./invalid-tests";
import { type Attempted, linesOf, measured, type Reason, type Scored, score } from "./line";

type ReadingEvent = AttemptEvent & {
  readonly observation: Extract<AttemptEvent["observation"], { kind: "reading" }>;
};
const isReading = (event: AttemptEvent): event is ReadingEvent => event.observation.kind === "reading";

/** One item of the line: worth `weight`, earned to `share`; null when it does not apply to this job. */
type Item = {
  readonly weight: number;
  readonly share: number;
  readonly text: string;
  readonly lines: number[];
} | null;

/**
 * Method: the concern confirmed before anything was taken apart; voltages read while the circuit carries its load;
 * tests that told causes apart; fuses, feeds and grounds before parts; predictions; a repair that could be tried tried
 * out. Items that do not apply leave their weight to the others. Invalid tests cost.
 */
export function scoreMethod(attempted: Attempted): Scored {
  if (!measured(attempted.events)) {
    return score(0, [{ text: "Nothing was measured.", effect: 0, lines: [] }]);
  }
  const items = [confirmed, loadedTests, tellingTests, order, predictions, verified]
    .map((item) => item(attempted))
    .filter((item) => item !== null);
  const total = items.reduce((sum, { weight }) => sum + weight, 0);
  const reasons: Reason[] = items.map(({ weight, share, text, lines }) => ({
    text,
    effect: (weight / total) * share,
    lines,
  }));
  reasons.push(...invalidTests(attempted.events));
  return score(
    reasons.reduce((sum, { effect }) => sum + effect, 0),
    reasons,
  );
}

const takesApart = ({ command }: AttemptEvent) => command.type === "unplug" || command.type === "pullFuse";

function confirmed({ events }: Attempted): Item {
  const operated = events.find(({ command }) => command.type === "setConditions");
  const apart = events.find(takesApart);
  const first = operated !== undefined && (apart === undefined || operated.sequence < apart.sequence);
  return {
    weight: 0.2,
    share: first ? 1 : 0,
    text: first
      ? "The car was operated before anything was taken apart."
      : "The concern was not confirmed: operate the car before you take anything apart.",
    lines: linesOf([operated, apart].filter((event) => event !== undefined)),
  };
}

/** Share of voltage readings that must be loaded to earn all: some open-circuit readings have their place. */
const enoughLoaded = 0.5;

function loadedTests({ events, loaded }: Attempted): Item {
  const volts = events.filter((event) => isReading(event) && event.observation.reading.function === "volts");
  const under = volts.filter(loaded);
  const share = volts.length === 0 ? 0 : Math.min(1, under.length / volts.length / enoughLoaded);
  const text =
    under.length === 0
      ? "No voltage was read while its circuit carried a load: an unplugged or switched-off circuit proves no feed and no ground."
      : `${under.length} of ${volts.length} voltage readings were taken while the circuit carries its load.`;
  return { weight: 0.25, share, text, lines: linesOf(under.length === 0 ? volts : under) };
}

/** Half of the tests telling something is good work. */
const enoughTelling = 0.5;

/** Ruling out counts like finding: half for how many tests told something, half for how much of it there was to tell. */
function tellingTests({ events, evidence, proof }: Attempted): Item {
  const tests = events.filter(({ observation }) =>
    ["reading", "codes", "liveData", "fuse"].includes(observation.kind),
  );
  const ruling = new Map(evidence.steps.map(({ line, ruledOut }) => [line, ruledOut.length]));
  const telling = tests.filter(({ sequence }) => (ruling.get(sequence) ?? 0) > 0);
  const causes = telling.reduce((sum, { sequence }) => sum + (ruling.get(sequence) ?? 0), 0);
  const often = Math.min(1, telling.length / tests.length / enoughTelling);
  return {
    weight: 0.25,
    share: (often + proof.narrowed) / 2,
    text: `${telling.length} of ${tests.length} tests told causes apart; together they ruled out ${causes}. Of what there was to find out after the hand-over, ${Math.round(100 * proof.narrowed)} % was found out.`,
    lines: linesOf(telling),
  };
}

function order({ context, events }: Attempted): Item {
  const { document } = context;
  const basic = new Set([
    ...document.components.filter(({ kind }) => kind === "fuse" || kind === "battery").map(({ id }) => id),
    ...document.groundPoints.map(({ id }) => id),
    ...document.components.filter(({ kind }) => kind === "module").map(({ id }) => id),
    ...document.connectors
      .filter(({ component }) =>
        document.components.some(({ id, kind }) => id === component && kind === "module"),
      )
      .map(({ id }) => id),
  ]);
  const ownerOf = (point: string) => point.split(/[.:]/)[0] ?? point;
  const supply = events.find(
    (event) =>
      event.observation.kind === "fuse" ||
      event.command.type === "readCodes" ||
      (isReading(event) &&
        [event.observation.red, event.observation.black].some((point) => basic.has(ownerOf(point)))),
  );
  const parts = events.find(({ command }) => command.type === "unplug" && !basic.has(command.connector));
  const first = supply !== undefined && (parts === undefined || supply.sequence < parts.sequence);
  return {
    weight: 0.1,
    share: first ? 1 : 0,
    text: first
      ? "Codes, fuses, feeds and grounds came before parts."
      : "Look at codes, fuses, feeds and grounds before you unplug parts.",
    lines: linesOf([supply, parts].filter((event) => event !== undefined)),
  };
}

/** A prediction is near within a tenth of the reading, or within what the meter cannot tell. */
function near(prediction: Prediction, { observation: { reading } }: ReadingEvent): boolean {
  if (prediction.kind === "overload") return reading.state === "overload";
  if (reading.value === null) return false;
  return (
    Math.abs(prediction.value - reading.value) <= 0.1 * Math.abs(reading.value) + tolerance(reading) + 0.05
  );
}

function predictions({ context, events }: Attempted): Item {
  const made = events.filter(isReading).filter(({ observation }) => observation.prediction !== undefined);
  if (made.length === 0) {
    if (!context.scenario.requirePrediction) return null;
    return { weight: 0.15, share: 0, text: "No reading was predicted.", lines: [] };
  }
  // Being wrong before looking is how a surprise is noticed: having predicted earns half.
  const good = made.filter(
    (event) => event.observation.prediction !== undefined && near(event.observation.prediction, event),
  );
  return {
    weight: 0.15,
    share: 0.5 + (0.5 * good.length) / made.length,
    text: `${made.length} readings were predicted, ${good.length} of them came out near.`,
    lines: linesOf(made),
  };
}

/** Only a fuse can be put right on this bench; where that is the cure, it should have been tried. */
function verified({ context, events }: Attempted): Item {
  const fuses = context.variant.faults.flatMap((fault) =>
    fault.kind === "fuseBlown" ? [fault.component] : [],
  );
  if (fuses.length === 0 || context.variant.normal) return null;
  const fitted = events.find(
    ({ command }) => command.type === "fitFuse" && command.fresh && fuses.includes(command.fuse),
  );
  const tried = events.find(
    ({ command, sequence }) =>
      fitted !== undefined && sequence > fitted.sequence && command.type === "setConditions",
  );
  return {
    weight: 0.1,
    share: tried !== undefined ? 1 : 0,
    text:
      tried !== undefined
        ? "A new fuse was fitted and the car tried out."
        : "The cure was not tried: fit a new fuse and operate the car.",
    lines: linesOf([fitted, tried].filter((event) => event !== undefined)),
  };
}
