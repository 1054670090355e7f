import { type Fault, faultTable } from "@probeworthy/vehicle";
import type { AttemptContext } from "../context";
import { representatives } from "../drawn-number";
import { hypothesesFor } from "../grade/hypotheses";
import { groupOf } from "../grade/repair-group";
import { concreteFault } from "../variant";

/** One way the car could be, as the strategy weighs it. One set of faults, or the two ends of a stretch of severities. */
export interface Candidate {
  readonly group: string;
  readonly cars: readonly [readonly Fault[]] | readonly [readonly Fault[], readonly Fault[]];
  /** Share before anything is looked at; all together 1. */
  readonly prior: number;
}

/** Share of the prior that the scenario's own candidates have, by their weights. Our own figure. */
const scenarioShare = 0.6;

/**
 * What might be wrong, from the scenario and the system alone: the variant's faults are left out of it, so that what is
 * planned tells nothing of them. Rates by kind, shared over places and severities; the scenario's candidates by weight.
 */
export function candidatesOf(context: AttemptContext): readonly Candidate[] {
  const { scenario, document } = context;
  const list = hypothesesFor({
    ...context,
    variant: { ...context.variant, faults: [], normal: true, candidate: "", title: "", seed: "" },
  });
  const kindOf = (faults: readonly Fault[]): Fault["kind"] | null => faults[0]?.kind ?? null;
  const perKind = new Map<Fault["kind"] | null, number>();
  const perGroup = new Map<string, number>();
  for (const { group, cars } of list) {
    const kind = kindOf(cars[0]);
    perKind.set(kind, (perKind.get(kind) ?? 0) + 1);
    perGroup.set(group, (perGroup.get(group) ?? 0) + 1);
  }
  const rateOf = (kind: Fault["kind"] | null): number =>
    (kind === null ? soundRate : faultTable[kind].priorRate) / (perKind.get(kind) ?? 1);
  const rates = list.map(({ cars }) => rateOf(kindOf(cars[0])));
  const allRates = rates.reduce((sum, rate) => sum + rate, 0);
  const allWeights = scenario.pool.reduce((sum, { weight }) => sum + weight, 0);
  const weights = new Map<string, number>();
  for (const entry of scenario.pool) {
    const faults = entry.faults.flatMap((template) => {
      const fault = concreteFault(template, (_field, range) => representatives(range)[0] ?? Number.NaN);
      return fault.ok ? [fault.value] : [];
    });
    const group = groupOf(faults, entry.normal ?? false, document);
    weights.set(group, (weights.get(group) ?? 0) + entry.weight);
  }
  return list.map(({ group, cars }, index) => ({
    group,
    cars,
    prior:
      (1 - scenarioShare) * ((rates[index] ?? 0) / allRates) +
      scenarioShare * ((weights.get(group) ?? 0) / allWeights / (perGroup.get(group) ?? 1)),
  }));
}

/** How often nothing is wrong, beside the rates of the fault table. Our own figure. */
const soundRate = 3;
