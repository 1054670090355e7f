import type { Fault } from "@probeworthy/vehicle";
import type { Command } from "../command";
import type { AttemptContext } from "../context";
import type { Steps } from "../grade/progress";
import type { Picture } from "./car-pictures";
import { nextTest, type Search, testKey } from "./next-test";
import { expectedBits, likelihoods, outcomesOf } from "./outcomes";
import {
  createPlan,
  groupShares,
  type Plan,
  priorShares,
  showAll,
  standingPlaces,
  uncertaintyOf,
} from "./plan";
import type { Situation } from "./situations";
import { leadsAfter, type PlannedTest } from "./tests";

export interface ReferenceStep {
  readonly text: string;
  readonly commands: readonly Command[];
  readonly minutes: number;
  /** Fall of the uncertainty about the repair group, and what is left of it, bits. */
  readonly bits: number;
  readonly uncertainty: number;
}

export interface ReferencePath {
  readonly minutes: number;
  readonly readings: number;
  readonly steps: readonly ReferenceStep[];
  /** The likeliest repair group at the end, and those no planned test could tell from it. */
  readonly topGroup: string;
  readonly equivalent: readonly string[];
  /** Share of all these together. */
  readonly topShare: number;
}

/** The search ends when this share is reached. */
export const certain = 0.95;
const stepLimit = 40;

/**
 * The strategy that takes the test with the greatest expected gain per shop minute until one repair group (with those no
 * planned test can tell from it) is above `certain`, or nothing helps, played to the variant's car. Pass a plan of
 * another variant of the same scenario to share its table; the day's weather is then that variant's.
 */
export function* referencePath(
  context: AttemptContext,
  plan: Plan = createPlan(context),
): Steps<ReferencePath> {
  return yield* searchFor(plan, context.variant.faults);
}

/** The same for any car: the faults are those of the car that answers the tests. */
export function* searchFor(plan: Plan, truth: readonly Fault[]): Steps<ReferencePath> {
  const [start] = plan.situations;
  if (start === undefined) throw new Error("a car is handed over in some situation");
  const steps: ReferenceStep[] = [];
  let search: Search = {
    shares: priorShares(plan),
    situation: start,
    leads: { red: null, black: null },
    visited: new Set(),
    done: new Set(),
  };
  search = yield* arrive(plan, search, start, truth);
  for (;;) {
    const found = yield* verdict(plan, search);
    const next = found.share > certain || steps.length >= stepLimit ? null : yield* nextTest(plan, search);
    if (next === null) return pathOf(steps, found);
    const before = uncertaintyOf(groupShares(plan, search.shares));
    if (next.situation !== search.situation) search = yield* arrive(plan, search, next.situation, truth);
    search = yield* carryOut(plan, search, next.test, truth);
    const uncertainty = uncertaintyOf(groupShares(plan, search.shares));
    steps.push({
      text: `${next.situation.title}: ${next.test.text}`,
      commands: next.commands,
      minutes: next.seconds / 60,
      bits: before - uncertainty,
      uncertainty,
    });
  }
}

/** Shop minutes of the reference strategy for a variant. */
export function* expectedMinutes(context: AttemptContext, plan?: Plan): Steps<number> {
  return (yield* referencePath(context, plan)).minutes;
}

/** Goes into a situation; what can be noticed there comes for nothing. */
function* arrive(plan: Plan, search: Search, situation: Situation, truth: readonly Fault[]): Steps<Search> {
  const visited = new Set([...search.visited, situation]);
  const look = plan.set.tests.find(({ work }) => work.kind === "look");
  if (look === undefined) throw new Error("one can always look");
  return yield* carryOut(plan, { ...search, situation, visited }, look, truth);
}

function* carryOut(plan: Plan, search: Search, test: PlannedTest, truth: readonly Fault[]): Steps<Search> {
  const { situation } = search;
  const key = testKey(plan, situation, test);
  if (search.done.has(key)) return search;
  const seen = plan.pictures(truth, situation);
  yield 0;
  const done = new Set([...search.done, key]);
  if (seen === null) return { ...search, done };
  const shown = yield* showAll(plan, situation, new Set(standingPlaces(search.shares)));
  const shares = weighed(search.shares, test, shown, seen);
  return { ...search, shares, done, leads: leadsAfter(test, search.leads) };
}

/** Bayes: shares after a test has shown what it has, all together 1 again. */
export function weighed(
  shares: Float64Array,
  test: PlannedTest,
  shown: Parameters<typeof likelihoods>[1],
  seen: Picture,
): Float64Array {
  let now = shares;
  for (const column of test.columns) {
    const chances = likelihoods(column, shown, seen);
    const joint = now.map((share, place) => share * (chances[place] ?? 0));
    const all = joint.reduce((sum, share) => sum + share, 0);
    now = joint.map((share) => share / all);
  }
  return now;
}

interface Verdict {
  readonly group: string;
  readonly equivalent: readonly string[];
  readonly share: number;
}

/** Rivals that are worth asking whether any test could tell them from the likeliest. */
const rivalShare = 0.005;
const rivalLimit = 8;

function* verdict(plan: Plan, search: Search): Steps<Verdict> {
  const groups = [...groupShares(plan, search.shares)].sort((one, other) => other[1] - one[1]);
  const [top, ...rest] = groups;
  if (top === undefined) throw new Error("something is always possible");
  const rivals = rest.filter(([, share]) => share >= rivalShare);
  const equivalent: [string, number][] = [];
  if (top[1] <= certain && rivals.length <= rivalLimit) {
    for (const rival of rivals) {
      if (!(yield* toldApart(plan, search, top[0], rival[0]))) equivalent.push(rival);
    }
  }
  return {
    group: top[0],
    equivalent: equivalent.map(([group]) => group),
    share: equivalent.reduce((sum, [, share]) => sum + share, top[1]),
  };
}

/** A test that would gain less than this of one bit tells two causes apart by luck only. */
const tellingBits = 0.1;

/** Would any planned test, in any situation, tell what is left of these two groups apart? */
function* toldApart(plan: Plan, search: Search, one: string, other: string): Steps<boolean> {
  const pair = new Map([one, other].map((group) => [group, plan.members.get(group) ?? []]));
  const standing = standingPlaces(search.shares);
  const places = new Set(standing.filter((place) => [...pair.values()].some((own) => own.includes(place))));
  const even = new Float64Array(search.shares.length);
  for (const own of pair.values()) {
    const mass = own.reduce((sum, place) => sum + (places.has(place) ? (search.shares[place] ?? 0) : 0), 0);
    for (const place of own) if (places.has(place)) even[place] = (search.shares[place] ?? 0) / mass / 2;
  }
  for (const situation of plan.situations) {
    const shown = yield* showAll(plan, situation, places);
    for (const test of plan.set.tests) {
      if (search.done.has(testKey(plan, situation, test))) continue;
      for (const column of test.columns) {
        if (expectedBits(outcomesOf(column, shown), pair, even) > tellingBits) return true;
      }
    }
  }
  return false;
}

function pathOf(steps: readonly ReferenceStep[], found: Verdict): ReferencePath {
  return {
    minutes: steps.reduce((sum, { minutes }) => sum + minutes, 0),
    readings: steps.reduce(
      (sum, { commands }) => sum + commands.filter(({ type }) => type === "takeReading").length,
      0,
    ),
    steps,
    topGroup: found.group,
    equivalent: found.equivalent,
    topShare: found.share,
  };
}
