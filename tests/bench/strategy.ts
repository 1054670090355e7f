import {
  type AttemptContext,
  bandOf,
  createPlan,
  difficultiesOf,
  makeVariant,
  makeVariantInBand,
  nextTest,
  type ReferencePath,
  referencePath,
} from "@probeworthy/evaluation/server";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { finish } from "../../packages/evaluation/src/grade/progress";
import { groupOf } from "../../packages/evaluation/src/grade/repair-group";
import { priorShares, showAll, standingPlaces } from "../../packages/evaluation/src/strategy/plan";
import { scenarioNamed } from "../support/attempt-bench";
import { cpuSeconds, median } from "./cpu";
import type { Measurement } from "./measurement";

const scenarios = [
  "air-like-a-sigh",
  "message-and-fans",
  "turns-and-turns",
  "no-breath-uphill",
  "message-at-every-start",
];
const variantsEach = 60;

function contextOf(id: string, seed: string): AttemptContext {
  const scenario = scenarioNamed(id);
  const variant = makeVariant(scenario, trainingVehicle, seed);
  if (!variant.ok) throw new Error(variant.error.message);
  return { scenario, document: trainingVehicle, variant: variant.value };
}

/** The reference strategy: what the next test costs, how often it is right, how equal the jobs of one band are. */
export async function strategyBench(): Promise<Measurement[]> {
  return [
    { name: "evidence.next_test_s", value: nextTestSeconds("no-breath-uphill"), unit: "s" },
    { name: "evidence.true_group_top_rank", value: topRank(), unit: "share" },
    { name: "variants.difficulty_spread", value: difficultySpread("air-like-a-sigh"), unit: "ratio" },
  ];
}

/**
 * CPU time from a posterior to the next test, the car standing as handed over and every candidate possible; what the
 * candidates show as handed over is known from the posterior, all other situations are worked out.
 */
function nextTestSeconds(id: string): number {
  return median(
    ["a", "b", "c"].map((seed) => {
      const plan = createPlan(contextOf(id, seed));
      const [situation] = plan.situations;
      if (situation === undefined) throw new Error("no situation");
      const shares = priorShares(plan);
      finish(showAll(plan, situation, new Set(standingPlaces(shares))));
      const search = {
        shares,
        situation,
        leads: { red: null, black: null },
        visited: new Set([situation]),
        done: new Set<string>(),
      };
      return cpuSeconds(() => {
        if (finish(nextTest(plan, search)) === null) throw new Error("some test must help");
      });
    }),
  );
}

/** Share of variants whose true repair group stands first, or among those no planned test can tell from the first. */
function topRank(): number {
  let right = 0;
  for (const id of scenarios) {
    const plan = createPlan(contextOf(id, "0"));
    for (let seed = 0; seed < variantsEach; seed++) {
      const context = contextOf(id, String(seed));
      const { faults, normal } = context.variant;
      const path: ReferencePath = finish(referencePath(context, plan));
      if ([path.topGroup, ...path.equivalent].includes(groupOf(faults, normal, trainingVehicle))) right++;
    }
  }
  return right / (scenarios.length * variantsEach);
}

/** Greatest over least expected minutes of jobs drawn in the fullest band, each with the weather of its own day. */
function difficultySpread(id: string): number {
  const scenario = scenarioNamed(id);
  const rows = finish(difficultiesOf(scenario, trainingVehicle));
  if (!rows.ok) throw new Error(rows.error.message);
  const perBand = new Map<number, number>();
  for (const { minutes, diagnosable } of rows.value) {
    const band = diagnosable ? bandOf(minutes)?.id : undefined;
    if (band !== undefined) perBand.set(band, (perBand.get(band) ?? 0) + 1);
  }
  const [fullest] = [...perBand].sort((one, other) => other[1] - one[1]);
  if (fullest === undefined) throw new Error("no band can be served");
  const minutes = ["a", "b", "c", "d"].map((seed) => {
    const variant = makeVariantInBand(scenario, trainingVehicle, seed, rows.value, fullest[0]);
    if (!variant.ok) throw new Error(variant.error.message);
    return finish(referencePath({ scenario, document: trainingVehicle, variant: variant.value })).minutes;
  });
  return Math.max(...minutes) / Math.min(...minutes);
}
