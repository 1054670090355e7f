import type { Command } from "@probeworthy/evaluation";
import { learnerViewSchema } from "@probeworthy/evaluation";
import { learnerView, makeVariant } from "@probeworthy/evaluation/server";
import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import type { Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { contextWith, open, scenarioNamed, step, type Worked, work } from "../support/attempt-bench";

const viewOf = ({ context, state, events }: Worked) => learnerView(context, state, events);

/** Keys that belong to the server: variant, seed, rubric, the car's memory, remarks. */
const secretKeys = new Set(
  "fault faults seed pool candidate candidates variant weight weights rubric passMark par slow world remarks meterFuse blownFuses instructorNote learningGoal level truth normal tolerances".split(
    " ",
  ),
);

function keysOf(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(keysOf);
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => [key, ...keysOf(inner)]);
}

const session: Command[] = [
  step.set({ key: "on", steeringEffort: 1 }),
  step.codes("A1"),
  { type: "readLiveData", module: "A1" },
  ...step.read("G1:+", "G1:-"),
  { type: "pullFuse", fuse: "F2" },
];

describe("a learner's view", () => {
  it.each(starterScenarios.map(({ id }) => id))("of %s carries no secret", (id) => {
    const scenario = scenarioNamed(id);
    const variant = makeVariant(scenario, trainingVehicle, "seed-that-must-not-show");
    if (!variant.ok) throw new Error(variant.error.message);
    const context = { scenario, document: trainingVehicle, variant: variant.value };
    const view = viewOf(work(open(context), ...session));
    expect(keysOf(view).filter((key) => secretKeys.has(key))).toEqual([]);
    const text = JSON.stringify(view);
    expect(text).not.toContain("seed-that-must-not-show");
    expect(text).not.toContain(scenario.instructorNote);
    for (const { title, id: candidate } of scenario.pool) {
      expect(text).not.toContain(candidate);
      if (title.length > 12) expect(text).not.toContain(title);
    }
  });

  it("is refused by its schema with anything added, at any depth", () => {
    const view = viewOf(open(contextWith(scenarioNamed("heavy-all-at-once"), [])));
    expect(learnerViewSchema.safeParse(view).success).toBe(true);
    expect(learnerViewSchema.safeParse({ ...view, seed: "s" }).success).toBe(false);
    expect(
      learnerViewSchema.safeParse({ ...view, bench: { ...view.bench, meterFuse: "good" } }).success,
    ).toBe(false);
    const [line] = view.log;
    expect(learnerViewSchema.safeParse({ ...view, log: [{ ...line, world: {} }] }).success).toBe(false);
  });

  // Pairs of faults that nothing in the session tells apart: the views must be the same, byte for byte.
  const scenario = scenarioNamed("something-with-the-steering");
  const alike: [string, Fault[], Fault[], Command[]][] = [
    [
      "a conductor and the contact at its end, probed at neither",
      [{ kind: "open", at: "W20" }],
      [{ kind: "open", at: "X10.1" }],
      [step.set({ key: "on" }), ...step.read("G1:+", "G1:-"), step.codes("A1")],
    ],
    [
      "an open fuse and the open conductor behind it, read before both",
      [{ kind: "fuseBlown", component: "F2" }],
      [{ kind: "open", at: "W20" }],
      [step.set({ key: "on", engineSpeed: 850 }), ...step.read("F2:1", "G1:-"), step.codes("A1")],
    ],
    [
      "nothing wrong and a fault in a circuit that is switched off",
      [],
      [{ kind: "open", at: "X13.2" }],
      [...step.read("G1:+", "G1:-"), { type: "wait", seconds: 60 }],
    ],
    [
      "two severities of an open-circuit reading",
      [{ kind: "seriesResistance", at: "XE3", ohms: 0.3 }],
      [{ kind: "seriesResistance", at: "XE3", ohms: 0.4 }],
      [{ type: "unplug", connector: "X10" }, ...step.read("X10.1:h", "X10.2:h")],
    ],
  ];
  it.each(alike)("is the same for %s", (_, one, other, commands) => {
    const [left, right] = [one, other].map((faults) =>
      work(open(contextWith(scenario, faults)), ...commands),
    );
    const observed = (from: Worked) => JSON.stringify(from.events.map(({ observation }) => observation));
    // What was observed is the same …
    expect(observed(left!)).toBe(observed(right!));
    // … so nothing else may differ.
    expect(JSON.stringify(viewOf(left!))).toBe(JSON.stringify(viewOf(right!)));
  });

  it("differs once the fuse is looked at", () => {
    const [melted, intact] = (
      [[{ kind: "fuseBlown", component: "F2" }], [{ kind: "open", at: "W20" }]] as Fault[][]
    ).map((faults) => viewOf(work(open(contextWith(scenario, faults)), { type: "pullFuse", fuse: "F2" })));
    expect(JSON.stringify(melted)).not.toBe(JSON.stringify(intact));
  });
});
