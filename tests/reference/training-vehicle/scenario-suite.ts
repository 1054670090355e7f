import { type ScenarioDocument, scenarioSchema } from "@probeworthy/evaluation";
import { checkScenario } from "@probeworthy/evaluation/server";
import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { describe, expect, it } from "vitest";
import { type Evidence, evidenceOf, healthyShows } from "./scenario-evidence";

/** Scenarios that are meant otherwise than the rule, each with the reason. */
export interface Exceptions {
  /** The customer brings a finding instead of a symptom: nothing need be noticed, only measured. */
  readonly findingBrought?: Readonly<Record<string, string>>;
  /** Symptoms alone may tell the causes apart. */
  readonly toldBySymptoms?: Readonly<Record<string, string>>;
  /** One cause only: the cause of another job with the same symptoms. */
  readonly alikeElsewhere?: Readonly<Record<string, string>>;
}

/** The checks every job must pass, with the causes at the mild end of their ranges, where they show least. */
export function describeJobs(title: string, scenarios: readonly ScenarioDocument[], exceptions: Exceptions) {
  const { findingBrought = {}, toldBySymptoms = {}, alikeElsewhere = {} } = exceptions;
  const known = new Map<string, Evidence>();
  const evidence = (scenario: ScenarioDocument, cause: ScenarioDocument["pool"][number]): Evidence => {
    const found = known.get(cause.id) ?? evidenceOf(scenario, cause, "mild");
    known.set(cause.id, found);
    return found;
  };
  const causes = scenarios.flatMap((scenario) =>
    scenario.pool
      .filter(({ normal }) => !normal)
      .map((entry) => ({ scenario, entry, job: scenario.id, id: entry.id })),
  );
  const told = (scenario: ScenarioDocument, entry: ScenarioDocument["pool"][number]): string =>
    [...evidence(scenario, entry).symptoms].sort().join("; ");

  describe(title, () => {
    it.each(scenarios.map((scenario) => [scenario.id, scenario] as const))(
      "%s is a scenario of this car that comes with the program",
      (_, scenario) => {
        expect(starterScenarios).toContain(scenario);
        expect(scenarioSchema.parse(JSON.parse(JSON.stringify(scenario)))).toEqual(scenario);
        expect(checkScenario(scenario, trainingVehicle)).toEqual([]);
        expect(scenario.instructorNote.length).toBeGreaterThan(80);
        expect(scenario.learningGoal.length).toBeGreaterThan(20);
        expect(scenario.complaints.length).toBeGreaterThan(0);
      },
    );

    it("have one id each, one id for each of their causes, and all three levels", () => {
      const ids = scenarios.map(({ id }) => id);
      expect(new Set(ids).size).toBe(ids.length);
      const pool = scenarios.flatMap((scenario) => scenario.pool.map(({ id }) => id));
      expect(new Set(pool).size).toBe(pool.length);
      expect(new Set(scenarios.map(({ level }) => level)).size).toBe(3);
    });

    it.each(scenarios.map((scenario) => [scenario.id, scenario] as const))(
      "%s: a healthy car shows nothing abnormal in its trials (common practice, no source)",
      (_, scenario) => {
        expect(healthyShows(scenario)).toEqual([]);
      },
    );

    it.each(causes)("$job: $id can be noticed and measured", ({ scenario, entry }) => {
      const { symptoms, codes, volts, amps, drains, ohms } = evidence(scenario, entry);
      if (!(scenario.id in findingBrought))
        expect([...symptoms, ...codes, ...(drains ? ["battery flat after some days"] : [])]).not.toEqual([]);
      expect([...volts, ...amps, ...ohms]).not.toEqual([]);
    });

    it.each(
      scenarios
        .filter(({ id, pool }) => !(id in toldBySymptoms) && !pool.every(({ normal }) => normal))
        .map((scenario) => [scenario.id, scenario] as const),
    )("%s: symptoms alone do not name the cause", (id, scenario) => {
      const elsewhere = alikeElsewhere[id];
      const others = starterScenarios.flatMap((other) =>
        other.system === scenario.system
          ? other.pool.filter((entry) => entry.id === elsewhere).map((entry) => told(other, entry))
          : [],
      );
      const all = [...scenario.pool.map((entry) => told(scenario, entry)), ...others.slice(0, 1)];
      expect(new Set(all).size, all.join(" | ")).toBeLessThan(all.length);
    });

    it("name no job that is not there as an exception", () => {
      const named = [findingBrought, toldBySymptoms, alikeElsewhere].flatMap(Object.keys);
      expect(named.filter((id) => !scenarios.some((scenario) => scenario.id === id))).toEqual([]);
    });
  });
}
