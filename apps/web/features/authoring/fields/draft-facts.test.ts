import { trainingVehicle } from "@probeworthy/training-vehicle";
import { describe, expect, it } from "vitest";
import { endsOf, looseTerminals, optionsOf, suggestionsOf } from "./draft-facts";
import { newComponent } from "./new-record";

describe("what a draft offers while typing", () => {
  it("every end a conductor of the training vehicle has is offered", () => {
    const offered = new Set(endsOf(trainingVehicle));
    const missing = trainingVehicle.conductors
      .flatMap(({ from, to }) => [from, to])
      .filter((end) => !offered.has(end));
    expect(missing).toEqual([]);
  });

  it("knows the terminals of half-done components", () => {
    expect(looseTerminals({ kind: "relay", contact: "changeOver" })).toEqual(["86", "85", "30", "87", "87a"]);
    expect(looseTerminals({ kind: "module", terminals: [{ name: "30" }, {}, null] })).toEqual(["30"]);
    expect(looseTerminals({ kind: "switch" })).toEqual([]);
    expect(looseTerminals(newComponent({}, "positionSensor"))).toEqual(["1", "2", "3"]);
  });

  it("a terminal behind a plug is not an end of its own", () => {
    const draft = {
      components: [{ kind: "lamp", id: "E1" }],
      connectors: [{ id: "X1", component: "E1", cavities: [{ cavity: "1", terminal: "1" }] }],
      groundPoints: [{ id: "XE1" }],
    };
    expect(endsOf(draft)).toEqual(["E1:2", "X1.1", "XE1"]);
    expect(suggestionsOf(draft, "points")).toEqual(["E1:2", "X1.1:h", "XE1:ring"]);
  });

  it("lists the options of a choice", () => {
    const [choice] = trainingVehicle.conditions.filter(({ kind }) => kind === "choice");
    expect(optionsOf(trainingVehicle, choice?.name ?? "")?.length).toBeGreaterThan(1);
    expect(optionsOf(trainingVehicle, "roadSpeed")).toBeUndefined();
  });
});
