import type { Command } from "@probeworthy/evaluation";
import { makeVariant } from "@probeworthy/evaluation/server";
import { steeringScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { describe, expect, it } from "vitest";
import { createCarPlayer } from "../../../packages/evaluation/src/grade/car-player";
import { agrees } from "../../../packages/evaluation/src/grade/evidence";
import { open, scenarioNamed, step, work } from "../../support/attempt-bench";

/** Everything that shows something of the car: symptoms, codes, live data, each meter function, fuses, time. */
const session: Command[] = [
  step.set({ key: "on", steeringEffort: 1 }),
  step.set({ key: "on", engineSpeed: 900 }),
  step.set({ steeringEffort: 5 }),
  step.codes("A1"),
  step.codes("A4"),
  { type: "readLiveData", module: "A1" },
  ...step.read("X10.1:h", "G1:-"),
  ...step.redTo("X12.1:h"),
  ...step.redTo("XE3:ring"),
  { type: "wait", seconds: 120 },
  step.set({ roadSpeed: 60, steeringEffort: -3 }),
  { type: "clearCodes", module: "A1" },
  step.set({ key: "start", engineSpeed: 0, steeringEffort: 0 }),
  step.set({ key: "off" }),
  { type: "selectFunction", function: "ohms" },
  ...step.redTo("X80:6"),
  { type: "placeLead", lead: "black", point: "X80:14" },
  { type: "takeReading" },
  { type: "pullFuse", fuse: "F11" },
  { type: "fitFuse", fuse: "F11", fresh: true },
  { type: "unplug", connector: "X12" },
  step.set({ key: "on" }),
  { type: "plug", connector: "X12" },
];

/** Every job about the steering, which the session works on, a healthy car, and two whose faults come and go. */
const scenarios = [
  ...steeringScenarios.map(({ id }) => id),
  "dim-while-starting",
  "sometimes-silent",
  "window-when-the-door-moves",
];

/** The grader plays candidates through a log in fewer, longer steps of time; that must not make the true one fall. */
describe("the true car, played through its own log, agrees with every line", () => {
  it.each(scenarios)("%s", (id) => {
    const scenario = scenarioNamed(id);
    for (const seed of ["one"]) {
      const variant = makeVariant(scenario, trainingVehicle, seed);
      if (!variant.ok) throw new Error(variant.error.message);
      const { events } = work(
        open({ scenario, document: trainingVehicle, variant: variant.value }),
        ...session,
      );
      const player = createCarPlayer(trainingVehicle, variant.value.faults, events);
      for (const [index, { observation, sequence }] of events.entries()) {
        const again = player(index);
        if (again === null) continue;
        expect(again, `line ${sequence}`).not.toBe("no_such_car");
        if (again !== "no_such_car") {
          expect(
            agrees(observation, [again]),
            `line ${sequence}: ${JSON.stringify([observation, again])}`,
          ).toBe(true);
        }
      }
    }
  });
});
