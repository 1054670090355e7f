import { readScanTool } from "@probeworthy/instruments";
import {
  advance,
  type ConditionValues,
  type Fault,
  type Result,
  type SymptomObservation,
  settle,
  startState,
  type VehicleDocument,
  type VehicleError,
} from "@probeworthy/vehicle";
import { learnersCar } from "./context";
import type { ScenarioDocument } from "./scenario";
import { makeVariant, type VariantError } from "./variant";

/** What a learner will meet with one seed. For the author: it tells the faults. */
export interface Preview {
  readonly seed: string;
  readonly candidate: string;
  readonly title: string;
  readonly faults: readonly Fault[];
  readonly complaint: string;
  readonly conditions: ConditionValues;
  readonly situations: readonly Situation[];
}

export interface Situation {
  readonly title: string;
  readonly noticed: readonly SymptomObservation[];
  readonly modules: readonly {
    readonly id: string;
    readonly answered: boolean;
    readonly codes: readonly string[];
  }[];
}

/** Conditions shown besides the hand-over, at most; taken from the terminal chart of the scenario's system. */
const situationLimit = 5;
/** Long enough for codes to mature, s. */
const lookSeconds = 20;

/**
 * Draws the variant of each seed and shows it in the hand-over condition and in those of the system's terminal chart:
 * faults with their severities, complaint, what can be noticed, and the codes of every module.
 */
export function previewVariants(
  scenario: ScenarioDocument,
  document: VehicleDocument,
  seeds: readonly string[],
): { readonly seed: string; readonly preview: Result<Preview, VariantError | VehicleError> }[] {
  return seeds.map((seed) => ({ seed, preview: previewOne(scenario, document, seed) }));
}

function previewOne(
  scenario: ScenarioDocument,
  document: VehicleDocument,
  seed: string,
): Result<Preview, VariantError | VehicleError> {
  const variant = makeVariant(scenario, document, seed);
  if (!variant.ok) return variant;
  const { candidate, title, faults, complaint, conditions } = variant.value;
  const vehicle = learnersCar({ scenario, document, variant: variant.value });
  const situations: Situation[] = [];
  for (const { title: name, values } of standardConditions(scenario, document)) {
    const started = startState(vehicle, { ...conditions, ...values });
    if (!started.ok) return started;
    const state = advance(vehicle, started.value, lookSeconds);
    if (!state.ok) return state;
    const settled = settle(vehicle, state.value);
    if (!settled.ok) return settled;
    const modules: Situation["modules"][number][] = [];
    for (const part of document.components) {
      if (part.kind !== "module") continue;
      const answer = readScanTool(vehicle, state.value, part.id);
      if (!answer.ok) return answer;
      const codes = answer.value.ok ? answer.value.codes.map(({ code, text }) => `${code} ${text}`) : [];
      modules.push({ id: part.id, answered: answer.value.ok, codes });
    }
    situations.push({ title: name, noticed: settled.value.symptoms, modules });
  }
  return { ok: true, value: { seed, candidate, title, faults, complaint, conditions, situations } };
}

function standardConditions(
  scenario: ScenarioDocument,
  document: VehicleDocument,
): { title: string; values: ConditionValues }[] {
  const rows = document.systems.find(({ id }) => id === scenario.system)?.chart ?? [];
  const byTitle = new Map(rows.map(({ conditionTitle, conditions }) => [conditionTitle, conditions]));
  return [
    { title: "As handed over", values: scenario.startConditions },
    ...[...byTitle].slice(0, situationLimit).map(([title, values]) => ({ title, values })),
  ];
}
