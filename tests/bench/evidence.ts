import type { AttemptEvent, Command } from "@probeworthy/evaluation";
import { decide, evolve, grade, gradeSteps } from "@probeworthy/evaluation/server";
import { contextWith, open, scenarioNamed, step, work } from "../support/attempt-bench";
import { cpuSeconds, median } from "./cpu";
import type { Measurement } from "./measurement";

/** A bad ground: most other causes explain the first readings too, so candidates have to be followed far into the log. */
const context = contextWith(scenarioNamed("gives-up-in-tight-turns"), [
  { kind: "seriesResistance", at: "XE3", ohms: 0.35 },
]);

/** 30 actions of a technician: the concern, codes, loaded voltages, one fuse and one connector, the key in between. */
const session: readonly Command[] = [
  step.set({ key: "on", engineSpeed: 850 }),
  step.set({ steeringEffort: 8 }),
  step.codes("A1"),
  step.codes("A4"),
  step.set({ key: "off", steeringEffort: 0 }),
  step.set({ key: "on", engineSpeed: 850 }),
  step.set({ steeringEffort: 3 }),
  { type: "readLiveData", module: "A1" },
  ...step.read("G1:+", "G1:-"),
  ...step.redTo("F2:1"),
  ...step.redTo("F2:2"),
  ...step.redTo("X10.1:h"),
  step.set({ steeringEffort: 0 }),
  { type: "pullFuse", fuse: "F11" },
  { type: "fitFuse", fuse: "F11", fresh: false },
  step.set({ key: "off" }),
  { type: "unplug", connector: "X10" },
  { type: "plug", connector: "X10" },
  step.set({ key: "on", engineSpeed: 850 }),
  step.set({ steeringEffort: 3 }),
  ...step.redTo("X10.2:h"),
  ...step.redTo("XE3:ring"),
  step.submit({ kind: "highResistance", place: "XE3" }, { action: "cleanGround" }),
];

/** What a grade, its longest piece, and a command cost a server. CPU time. */
export async function evidenceBench(): Promise<Measurement[]> {
  const { events } = work(open(context), ...session);
  const whole = () => {
    const graded = grade(context, events);
    if (!graded.ok) throw new Error(graded.error.message);
  };
  const grades = Array.from({ length: 3 }, () => cpuSeconds(whole));
  return [
    { name: "evidence.grade_30_actions_s", value: median(grades), unit: "s" },
    { name: "evidence.longest_piece_ms", value: longestPiece(events) * 1e3, unit: "ms" },
    { name: "evidence.decide_ms", value: median(decideTimes()) * 1e3, unit: "ms" },
  ];
}

/** Reading the CPU clock at every piece costs something itself, so this is a run of its own. */
function longestPiece(events: readonly AttemptEvent[]): number {
  const steps = gradeSteps(context, events);
  let longest = 0;
  let done = false;
  while (!done) {
    const seconds = cpuSeconds(() => {
      done = steps.next().done === true;
    });
    longest = Math.max(longest, seconds);
  }
  return longest;
}

/** Seconds of each command that is more than moving a lead. */
function decideTimes(): number[] {
  const times: number[] = [];
  for (let turn = 0; turn < 3; turn++) {
    let { state } = open(context);
    for (const command of session) {
      const seconds = cpuSeconds(() => {
        const decision = decide(context, state, command);
        if (!decision.ok) throw new Error(decision.error.message);
        for (const event of decision.value) state = evolve(state, event);
      });
      if (command.type !== "placeLead" && command.type !== "submitReport") times.push(seconds);
    }
  }
  return times;
}
