import { checkScenario, makeVariant, previewVariants } from "@probeworthy/evaluation/server";
import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { describe, expect, it } from "vitest";
import { scenarioNamed } from "../../support/attempt-bench";

const scenario = scenarioNamed("gives-up-in-tight-turns");
const drawn = (seed: string) => {
  const variant = makeVariant(scenario, trainingVehicle, seed);
  if (!variant.ok) throw new Error(variant.error.message);
  return variant.value;
};

describe("a variant", () => {
  it("is the same for the same seed, byte for byte", () => {
    for (const seed of ["a", "b", "é"]) expect(JSON.stringify(drawn(seed))).toBe(JSON.stringify(drawn(seed)));
  });

  // A scenario on record, so that a change of the training vehicle's own scenarios does not break the promise's test.
  const recorded = {
    ...scenario,
    complaints: ["The steering gives up in tight turns.", "Heavy when I park, then the lamp comes on."],
    pool: [
      {
        id: "ring",
        title: "Ring corroded",
        weight: 3,
        faults: [
          { kind: "seriesResistance", at: "XE3", ohms: { from: 0.22, to: 0.5, spread: "log" as const } },
        ],
      },
      {
        id: "contact",
        title: "Contact spread",
        weight: 1,
        faults: [
          { kind: "seriesResistance", at: "X10.2", ohms: { from: 0.22, to: 0.5, spread: "log" as const } },
        ],
      },
    ],
  };
  it.each([
    ["a", "ring", 0.361, 1, 20],
    ["b", "ring", 0.36, 1, 24],
    ["class-7/learner-3", "ring", 0.326, 0, 25],
    ["é", "ring", 0.312, 0, 18],
    ["2", "ring", 0.284, 0, 18],
  ] as const)("of seed %j is %s, %d Ω, complaint %d, %d °C", (seed, candidate, ohms, complaint, celsius) => {
    const variant = makeVariant(recorded, trainingVehicle, seed);
    expect(variant.ok && variant.value.candidate).toBe(candidate);
    expect(variant.ok && variant.value.faults[0]).toMatchObject({ ohms });
    expect(variant.ok && recorded.complaints.indexOf(variant.value.complaint)).toBe(complaint);
    expect(variant.ok && variant.value.conditions).toEqual({ ambientTemperature: celsius });
  });

  it("names the path of a fault that cannot be", () => {
    const broken = {
      ...scenario,
      pool: [
        { id: "x", title: "A place that is not there", weight: 1, faults: [{ kind: "open", at: "W999" }] },
      ],
    };
    const variant = makeVariant(broken, trainingVehicle, "a");
    expect(variant.ok ? null : variant.error.code).toBe("invalid_fault");
    expect(variant.ok ? "" : variant.error.path).toMatch(/^pool\[0\]/);
  });
});

describe("checkScenario", () => {
  it.each(starterScenarios.map((one) => [one.id, one] as const))("finds nothing wrong with %s", (_, one) => {
    expect(checkScenario(one, trainingVehicle)).toEqual([]);
  });

  const first = scenario.pool[0]!;
  it.each([
    ["vehicle", { vehicle: "another" }],
    ["system", { system: "brakes" }],
    ["pool[1].id", { pool: [first, first] }],
    ["pool[0].faults[0].ohms", { pool: [{ ...first, faults: [{ kind: "seriesResistance", at: "XE3" }] }] }],
    ["startConditions.keys", { startConditions: { keys: "on" } }],
    ["startConditions.key", { startConditions: { key: "sideways" } }],
    ["startConditions.engineSpeed", { startConditions: { engineSpeed: 99999 } }],
    ["par.shopMinutes", { par: { shopMinutes: 500, readings: 3 } }],
  ])("names %s", (path, change) => {
    const paths = checkScenario({ ...scenario, ...change }, trainingVehicle)
      .filter(({ severity }) => severity === "error")
      .map((message) => message.path);
    expect(paths).toEqual([path]);
  });

  it("names the candidate whose place does not exist", () => {
    const messages = checkScenario(
      { ...scenario, pool: [{ ...first, faults: [{ kind: "open", at: "W999" }] }] },
      trainingVehicle,
    );
    expect(messages[0]?.path).toMatch(/^pool\[0\]/);
    expect(messages[0]?.message).toContain("W999");
  });
});

describe("previewVariants", () => {
  it("shows an author what learners will meet", () => {
    const [shown] = previewVariants(scenarioNamed("steering-asleep"), trainingVehicle, ["a"]);
    if (shown?.preview.ok !== true) throw new Error("no preview");
    const { situations, candidate } = shown.preview.value;
    expect(candidate).toMatch(/^ignition-feed/);
    // Without its ignition feed the steering module sleeps whatever the key does.
    expect(situations.length).toBeGreaterThan(1);
    for (const { modules } of situations) {
      expect(modules.find(({ id }) => id === "A1")?.answered).toBe(false);
    }
  });
});
