import { scenarioSchema } from "@probeworthy/evaluation";
import { checkScenario } from "@probeworthy/evaluation/server";
import { drivingAndComfortScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { describe, expect, it } from "vitest";

describe("the jobs about engine, wheels, network, blower, window and wiper", () => {
  it.each(drivingAndComfortScenarios.map((scenario) => [scenario.id, scenario] as const))(
    "%s is a scenario of this car",
    (_, scenario) => {
      expect(scenarioSchema.parse(JSON.parse(JSON.stringify(scenario)))).toEqual(scenario);
      expect(checkScenario(scenario, trainingVehicle)).toEqual([]);
      expect(scenario.instructorNote.length).toBeGreaterThan(80);
    },
  );

  it("have one id each, one id for each of their causes, and all three levels", () => {
    const ids = drivingAndComfortScenarios.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const causes = drivingAndComfortScenarios.flatMap(({ pool }) => pool.map(({ id }) => id));
    expect(new Set(causes).size).toBe(causes.length);
    expect(new Set(drivingAndComfortScenarios.map(({ level }) => level)).size).toBe(3);
  });
});
