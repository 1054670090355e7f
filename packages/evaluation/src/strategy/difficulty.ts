import { err, ok, type Result, type VehicleDocument } from "@probeworthy/vehicle";
import { representatives } from "../drawn-number";
import { type Steps, stage as stretch } from "../grade/progress";
import { groupOf } from "../grade/repair-group";
import type { FaultTemplate, ScenarioDocument } from "../scenario";
import { makeVariant, type Variant, type VariantError } from "../variant";
import { createPlan } from "./plan";
import { certain, referencePath } from "./reference-path";

/** How hard one candidate of a scenario is at one stage of its severity. */
export interface Difficulty {
  /** Id of the pool entry. */
  readonly candidate: string;
  /** 0 is the beginning of every range of the entry, `severityStages` − 1 its end; 0 alone where it has no range. */
  readonly stage: number;
  /** Shop minutes of the reference strategy. */
  readonly minutes: number;
  /** The strategy ends with the true repair group, or with those no planned test can tell from it, above 0.95. */
  readonly diagnosable: boolean;
}

/** Severities of a candidate whose length is known; a job in a band takes one of them. */
export const severityStages = 3;

/** Longest over shortest expected length inside one band. */
export const bandRatio = 1.3;
/** Where the lowest band begins, min. */
const lowest = 0.5;

/** A contiguous range of expected minutes, `from` included, `to` not. */
export interface Band {
  readonly id: number;
  readonly from: number;
  readonly to: number;
}

export function bandAt(id: number): Band {
  const from = lowest * bandRatio ** id;
  return { id, from, to: from * bandRatio };
}

/** The band of an expected length; null for less than half a minute, which is no work to grade. */
export function bandOf(minutes: number): Band | null {
  if (minutes < lowest) return null;
  const id = Math.floor(Math.log(minutes / lowest) / Math.log(bandRatio));
  return bandAt(minutes < bandAt(id + 1).from ? id : id + 1); // at an edge the logarithm may be a hair short
}

/**
 * Length and diagnosability of every candidate at each stage of its severity. Costs seconds to minutes: do it once per
 * scenario version and keep it; it does not depend on a seed.
 * Errors: the first candidate that makes no variant.
 */
export function* difficultiesOf(
  scenario: ScenarioDocument,
  document: VehicleDocument,
): Steps<Result<Difficulty[], VariantError>> {
  const concrete = concreteEntries(scenario);
  const rows: Difficulty[] = [];
  let plan: ReturnType<typeof createPlan> | undefined;
  for (const [position, { candidate, stage, entry }] of concrete.entries()) {
    const variant = makeVariant({ ...scenario, pool: [entry] }, document, "difficulty");
    if (!variant.ok) return variant;
    const context = { scenario, document, variant: { ...variant.value, conditions: {} } };
    plan ??= createPlan(context);
    const part = [position / concrete.length, (position + 1) / concrete.length] as const;
    const path = yield* stretch(referencePath(context, plan), ...part);
    const truth = groupOf(variant.value.faults, variant.value.normal, document);
    const right = path.topGroup === truth || path.equivalent.includes(truth);
    rows.push({ candidate, stage, minutes: path.minutes, diagnosable: right && path.topShare > certain });
  }
  return ok(rows);
}

/** Bands the scenario can serve, with the candidates in each, from the shortest. */
export function bandsOf(rows: readonly Difficulty[]): { band: Band; candidates: string[] }[] {
  const byBand = new Map<number, Set<string>>();
  for (const { candidate, minutes, diagnosable } of rows) {
    const id = diagnosable ? bandOf(minutes)?.id : undefined;
    if (id !== undefined) byBand.set(id, (byBand.get(id) ?? new Set()).add(candidate));
  }
  return [...byBand]
    .sort(([one], [other]) => one - other)
    .map(([id, candidates]) => ({ band: bandAt(id), candidates: [...candidates] }));
}

export interface NoSuchBand {
  readonly code: "no_candidate_in_band";
  readonly message: string;
}

/**
 * Draws a variant whose expected length lies in the band and that can be diagnosed: the candidate by its weight among
 * those that have a severity in the band, then one of those severities. The same arguments give the same variant.
 */
export function makeVariantInBand(
  scenario: ScenarioDocument,
  document: VehicleDocument,
  seed: string,
  rows: readonly Difficulty[],
  band: number,
): Result<Variant, VariantError | NoSuchBand> {
  const fits = new Set(
    rows.flatMap(({ candidate, stage, minutes, diagnosable }) =>
      diagnosable && bandOf(minutes)?.id === band ? [`${stage} ${candidate}`] : [],
    ),
  );
  const fitting = concreteEntries(scenario).filter(({ candidate, stage }) =>
    fits.has(`${stage} ${candidate}`),
  );
  if (fitting.length === 0) {
    const { from, to } = bandAt(band);
    const range = `${from.toFixed(1)} to ${to.toFixed(1)} minutes`;
    return err({ code: "no_candidate_in_band", message: `No cause of this scenario takes ${range}.` });
  }
  const pool = fitting.map(({ candidate, entry }) => ({
    ...entry,
    weight: entry.weight / fitting.filter((other) => other.candidate === candidate).length,
  }));
  return makeVariant({ ...scenario, pool }, document, seed);
}

type Entry = ScenarioDocument["pool"][number];

/** Every pool entry at each stage of its severity, all its ranges moved together. */
function concreteEntries(scenario: ScenarioDocument): { candidate: string; stage: number; entry: Entry }[] {
  return scenario.pool.flatMap((entry) => {
    const ranges = entry.faults.some((fault) =>
      Object.values(fault).some((value) => typeof value === "object"),
    );
    return Array.from({ length: ranges ? severityStages : 1 }, (_, stage) => ({
      candidate: entry.id,
      stage,
      entry: { ...entry, faults: entry.faults.map((fault) => atStage(fault, stage)) },
    }));
  });
}

const atStage = (template: FaultTemplate, stage: number): FaultTemplate =>
  ({
    ...template,
    ...Object.fromEntries(
      Object.entries(template).flatMap(([field, value]) =>
        typeof value === "object" ? [[field, representatives(value)[stage] ?? value.to]] : [],
      ),
    ),
  }) as FaultTemplate;
