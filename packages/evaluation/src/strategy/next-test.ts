import type { Command } from "../command";
import type { Steps } from "../grade/progress";
import { expectedBits, outcomesOf } from "./outcomes";
import { type Plan, showAll, standingPlaces } from "./plan";
import { type Situation, wayTo } from "./situations";
import { commandsOf, type Leads, type PlannedTest, secondsOf } from "./tests";

/** Where the search for the fault has come to. */
export interface Search {
  readonly shares: Float64Array;
  readonly situation: Situation;
  readonly leads: Leads;
  /** Situations in which all candidates that count have been solved. */
  readonly visited: ReadonlySet<Situation>;
  readonly done: ReadonlySet<string>;
}

export interface NextTest {
  readonly situation: Situation;
  readonly test: PlannedTest;
  /** What leads there and shows it, in the order in which it is done. */
  readonly commands: readonly Command[];
  readonly seconds: number;
  /** Bits it is expected to gain. */
  readonly bits: number;
}

/** In situations not yet visited this many of the likeliest candidates stand for all. */
const scouts = 12;
/** Less than this is no help, bits. */
export const leastBits = 0.01;

export const testKey = (plan: Plan, situation: Situation, test: PlannedTest): string =>
  `${plan.situations.indexOf(situation)} ${test.text}`;

/**
 * The test with the greatest expected gain per shop minute, the way into its situation included; null when no test is
 * expected to gain `leastBits`. Ties go to the earlier in the list, so that the answer is always the same.
 */
export function* nextTest(plan: Plan, search: Search): Steps<NextTest | null> {
  const { document } = plan;
  const standing = standingPlaces(search.shares);
  let best: (NextTest & { rate: number }) | null = null;
  for (const [position, situation] of plan.situations.entries()) {
    const visited = search.visited.has(situation);
    const places = new Set(visited ? standing : standing.slice(0, scouts));
    const shown = yield* showAll(plan, situation, places);
    const shares = search.shares.map((share, place) => (places.has(place) ? share : 0));
    const mass = shares.reduce((sum, share) => sum + share, 0);
    if (mass === 0) continue;
    const normalised = shares.map((share) => share / mass);
    const way = wayTo(search.situation, situation, document);
    for (const test of plan.set.tests) {
      if (search.done.has(testKey(plan, situation, test))) continue;
      const commands = [...way, ...commandsOf(test, search.leads)];
      const seconds = secondsOf(commands);
      if (seconds === 0) continue; // what can be noticed here has been
      let bits = 0;
      for (const column of test.columns) {
        bits = Math.max(bits, mass * expectedBits(outcomesOf(column, shown), plan.members, normalised));
      }
      const rate = bits / seconds;
      if (bits < leastBits || (best !== null && rate <= best.rate * (1 + 1e-9))) continue;
      best = { situation, test, commands, seconds, bits, rate };
    }
    yield position / plan.situations.length;
  }
  return best;
}
