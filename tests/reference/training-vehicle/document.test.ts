import { type ScenarioDocument, scenarioSchema } from "@probeworthy/evaluation";
import { checkScenario, makeVariant } from "@probeworthy/evaluation/server";
import { starterScenarios, steeringScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { parseVehicle, prepareVehicle, validateVehicle } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { type Severity, suppliedFaults } from "./supplied-faults";
import { must } from "./test-drive";

describe("the training vehicle's document", () => {
  it("parses as it stands, and after a trip through JSON", () => {
    const parsed = parseVehicle(JSON.parse(JSON.stringify(trainingVehicle)));
    expect(parsed.ok ? [] : parsed.error).toEqual([]);
    expect(parsed).toEqual({ ok: true, value: trainingVehicle });
  });

  it("gives the validator nothing to say, neither error nor warning", () => {
    expect(validateVehicle(trainingVehicle)).toEqual([]);
  });

  it("gives every conductor of a bus pair its partner of equal length and size", () => {
    const pair = trainingVehicle.conductors.filter(({ twistedPair }) => twistedPair === "CAN");
    const size = (colour: string) =>
      pair
        .filter((conductor) => conductor.colour === colour)
        .map(({ metres, squareMillimetres }) => [metres, squareMillimetres]);
    expect(size("BUPK")).toEqual(size("BU"));
    expect(pair.length).toBe(24);
  });
});

const variants = new Map<string, string>();
const drawn = (scenario: ScenarioDocument, seed: string): string => {
  const key = `${scenario.id} ${seed}`;
  const candidate = variants.get(key) ?? must(makeVariant(scenario, trainingVehicle, seed)).candidate;
  variants.set(key, candidate);
  return candidate;
};

describe("the starter scenarios", () => {
  it.each(steeringScenarios.map((scenario) => [scenario.id, scenario]))("%s parses", (_id, scenario) => {
    expect(scenarioSchema.parse(JSON.parse(JSON.stringify(scenario)))).toEqual(scenario);
    expect(checkScenario(scenario, trainingVehicle)).toEqual([]);
  });

  it("give learners different cars: two seeds in a dozen differ in every job with more than one cause", () => {
    for (const scenario of starterScenarios.filter(({ pool }) => pool.length > 1)) {
      const differs = Array.from({ length: 12 }, (_, seed) => `seed ${seed}`).some(
        (seed) => drawn(scenario, seed) !== drawn(scenario, "seed 0"),
      );
      expect(differs, scenario.id).toBe(true);
    }
  });

  it("have one id each, and one id for each of their causes", () => {
    const ids = starterScenarios.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const single = steeringScenarios.slice(0, -1).flatMap(({ pool }) => pool.map(({ id }) => id));
    expect(new Set(single).size).toBe(single.length);
    expect(steeringScenarios.at(-1)?.pool.map(({ id }) => id)).toEqual(single);
  });

  it.each(
    suppliedFaults.flatMap((fault) => (["mild", "middle", "severe"] as const).map((s) => [fault.id, s])),
  )("%s, %s: stands at a place the vehicle has", (id, severity) => {
    const fault = suppliedFaults.find((candidate) => candidate.id === id);
    const prepared = prepareVehicle(trainingVehicle, fault?.faults(severity as Severity));
    expect(prepared.ok ? "" : prepared.error).toBe("");
  });
});
