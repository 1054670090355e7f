import { trainingVehicle } from "@probeworthy/training-vehicle";
import type { Fault } from "@probeworthy/vehicle";
import { expect, it } from "vitest";
import { createCarPlayer } from "../../../packages/evaluation/src/grade/car-player";
import { agrees } from "../../../packages/evaluation/src/grade/evidence";
import { createHealthyTrack } from "../../../packages/evaluation/src/grade/healthy-track";
import { contextWith, open, scenarioNamed, step, work } from "../../support/attempt-bench";

/** Key off, the horn's and the steering's wires are dead; then the steering wakes and helps. */
const { events } = work(
  open(contextWith(scenarioNamed("heavy-all-at-once"), [])),
  ...step.read("X10.1:h", "G1:-"),
  step.set({ key: "on", engineSpeed: 850 }),
  step.set({ steeringEffort: 3 }),
  step.codes("A1"),
  ...step.redTo("X15.1:h"),
);

const wireAt = (end: string): string => {
  const wire = trainingVehicle.conductors.find(({ from, to }) => from === end || to === end);
  if (wire === undefined) throw new Error(`no conductor at ${end}`);
  return wire.id;
};

/** A car that goes the healthy one's way while its fault lies on a dead conductor shows what it shows by itself. */
it.each<Fault>([
  { kind: "open", at: wireAt("X10.1") },
  { kind: "open", at: wireAt("X15.1") },
  { kind: "shortToGround", at: "X15.1:h", ohms: 0.02 },
  { kind: "seriesResistance", at: "X15.1", ohms: 200 },
])("$kind at $at", (fault) => {
  const alone = createCarPlayer(trainingVehicle, [fault], events);
  const following = createCarPlayer(
    trainingVehicle,
    [fault],
    events,
    createHealthyTrack(trainingVehicle, events),
  );
  for (const [index, { sequence }] of events.entries()) {
    const [one, other] = [alone(index), following(index)];
    if (one === null || one === "no_such_car" || other === null || other === "no_such_car") {
      expect(other, `line ${sequence}`).toBe(one);
    } else expect(agrees(one, [other]), `line ${sequence}: ${JSON.stringify([one, other])}`).toBe(true);
  }
});
