import { decide, evolve, grade, gradeSteps } from "@probeworthy/evaluation/server";
import { expect, it } from "vitest";
import { contextWith, open, scenarioNamed, step, work } from "../../support/attempt-bench";

const context = contextWith(scenarioNamed("heavy-all-at-once"), [{ kind: "open", at: "X10.1" }]);
const worked = work(
  open(context),
  step.set({ key: "on", engineSpeed: 850 }),
  step.set({ steeringEffort: 4 }),
  step.codes("A1"),
  ...step.read("X10.1:h", "G1:-"),
  step.submit({ place: "X10.1" }),
);

/** What a server does: two logs are graded in turns, and somebody else works on a car meanwhile. */
it("grading in pieces, with other work in between, gives the grade of one go", () => {
  const whole = grade(context, worked.events);
  const other = open(contextWith(scenarioNamed("gives-up-in-tight-turns"), [{ kind: "open", at: "W21" }]));
  const [first, second] = [gradeSteps(context, worked.events), gradeSteps(context, worked.events)];
  const progress: number[] = [];
  let { state } = other;
  for (let turn = 0; ; turn++) {
    const piece = first.next();
    if (piece.done === true) {
      expect(JSON.stringify(piece.value)).toBe(JSON.stringify(whole));
      break;
    }
    progress.push(piece.value);
    second.next();
    if (turn % 40 !== 0) continue;
    const decision = decide(other.context, state, step.set({ key: turn % 80 === 0 ? "on" : "off" }));
    if (decision.ok) for (const event of decision.value) state = evolve(state, event);
  }
  expect(state.sequence).toBeGreaterThan(2);
  // Small pieces that only ever go forward.
  expect(progress.length).toBeGreaterThan(100);
  expect(progress).toEqual([...progress].sort((a, b) => a - b));
  expect(progress[0]).toBeGreaterThanOrEqual(0);
  expect(progress.at(-1)).toBeLessThanOrEqual(1);
});
