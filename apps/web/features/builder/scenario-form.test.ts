import { scenarioSchema } from "@probeworthy/evaluation";
import { starterScenarios } from "@probeworthy/training-vehicle";
import { describe, expect, it } from "vitest";
import { emptyCandidate, emptyFault, fromDocument, slug, toDocument } from "./scenario-form";

describe("a scenario in the form", () => {
  it.each(starterScenarios.map((scenario) => [scenario.id, scenario] as const))(
    "%s comes out as it went in",
    (_id, scenario) => {
      expect(scenarioSchema.parse(toDocument(fromDocument(scenario)))).toEqual(scenario);
    },
  );

  it("keeps half-done work through saving and loading", () => {
    const form = fromDocument({ title: "Half", vehicle: "a-car" });
    form.pool = [
      {
        ...emptyCandidate(),
        title: "No ground",
        faults: [{ ...emptyFault("seriesResistance"), at: "X1.2" }],
      },
    ];
    form.pool[0]?.faults.push(emptyFault());
    form.complaints = [{ text: "It do" }];
    const again = fromDocument(JSON.parse(JSON.stringify(toDocument(form))));
    expect(again).toEqual({ ...form, pool: [{ ...form.pool[0], id: "no-ground" }] });
  });

  it.each([[null], [undefined], [7], ["x"], [[]], [{ pool: [null, 3], limits: "none", weights: [] }]])(
    "reads %j without failing",
    (saved) => {
      expect(scenarioSchema.safeParse(toDocument(fromDocument(saved))).success).toBe(false);
    },
  );

  it("gives candidates of the same title different ids", () => {
    const form = fromDocument({});
    form.pool = [emptyCandidate(), emptyCandidate(), emptyCandidate()].map((one) => ({
      ...one,
      title: "Fuse F2!",
    }));
    const { pool } = toDocument(form) as { pool: { id: string }[] };
    expect(pool.map(({ id }) => id)).toEqual(["fuse-f2", "fuse-f2-2", "fuse-f2-3"]);
  });

  it.each([
    ["Öl & Lenkung 12", "ol-lenkung-12"],
    ["12 volts", "volts"],
    ["???", ""],
  ])("makes the id of %j", (title, id) => {
    expect(slug(title)).toBe(id);
  });
});
