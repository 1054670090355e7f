import type { GradeResult, RubricLineName } from "@probeworthy/evaluation";
import { grade } from "@probeworthy/evaluation/server";
import { describe, expect, it } from "vitest";
import { contextWith, open, scenarioNamed, step, type Worked, work } from "../../support/attempt-bench";

/** The ring of the main ground is corroded: everything reads right until current flows. */
const context = contextWith(scenarioNamed("gives-up-in-tight-turns"), [
  { kind: "seriesResistance", at: "XE3", ohms: 0.35 },
]);

const graded = ({ events }: Worked): GradeResult => {
  const result = grade(context, events);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const lineOf = (result: GradeResult, name: RubricLineName) => {
  const line = result.lines.find(({ line }) => line === name);
  if (line === undefined) throw new Error(`no line ${name}`);
  return line;
};
const standing = (result: GradeResult): readonly string[] => result.evidence.steps.at(-1)?.standing ?? [];

const rightReport = step.submit({ kind: "highResistance", place: "XE3" }, { action: "cleanGround" });
// The other side of the circuit: neither the place nor next to it.
const wrongReport = step.submit({ kind: "highResistance", place: "F11" }, { action: "replaceFuse" });

/** The concern seen, the code read, and the key cycled so that the module helps again. */
const prelude = work(
  open(context),
  step.set({ key: "on", engineSpeed: 850 }),
  step.set({ steeringEffort: 8 }),
  step.codes("A1"),
  step.set({ key: "off", steeringEffort: 0 }),
  step.set({ key: "on", engineSpeed: 850 }),
  step.set({ steeringEffort: 3 }),
);
const tested = work(prelude, ...step.read("X10.2:h", "G1:-"), ...step.read("XE3:ring", "XE3:body"));

const expert = graded(work(tested, rightReport));
const reasonedButWrong = graded(work(tested, wrongReport));
const unproven = graded(work(prelude, rightReport));
const lucky = graded(work(open(context), rightReport));

describe("cause and its proof", () => {
  it("proven and named earns everything, and says with which lines", () => {
    expect(expert.evidence).toMatchObject({ truth: "XE3", named: "XE3", proven: true });
    expect(lineOf(expert, "cause").share).toBe(1);
    expect(expert.passed).toBe(true);
    const cited = lineOf(expert, "cause").reasons.flatMap(({ lines }) => lines);
    const drop = tested.events.at(-1)?.sequence;
    expect(cited).toContain(drop);
  });

  it("orders expert > right but unproven > wrong though well reasoned > right by luck", () => {
    const shares = [expert, unproven, reasonedButWrong, lucky].map((result) => lineOf(result, "cause").share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(new Set(shares).size).toBe(4);
    expect(lineOf(unproven, "cause").share).toBeLessThanOrEqual(0.5);
  });

  it("gives a lucky guess nothing for evidence, and sound reasoning most of it", () => {
    const evidence = (result: GradeResult) => lineOf(result, "cause").reasons[1]?.effect ?? Number.NaN;
    expect(evidence(lucky)).toBe(0);
    expect(evidence(reasonedButWrong)).toBeGreaterThan(0.35);
  });

  it("rules out step by step, never takes a cause back, and keeps the truth to the end", () => {
    for (const result of [expert, unproven, lucky]) {
      const { steps, candidates, truth } = result.evidence;
      let before = candidates.map(({ id }) => id);
      for (const { standing: now, ruledOut } of steps) {
        expect(now).toContain(truth);
        expect([...now, ...ruledOut].sort()).toEqual([...before].sort());
        before = now;
      }
    }
  });

  it("scores in the same order overall", () => {
    const scores = [expert, unproven, lucky].map(({ score }) => score);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
    expect(lucky.passed).toBe(false);
  });
});

describe("loaded and unloaded", () => {
  // Technicians' rule (field reports): a voltage at an unplugged connector proves neither feed nor ground.
  const unplugged = work(
    open(context),
    step.set({ key: "on", engineSpeed: 850, steeringEffort: 0 }),
    step.set({ key: "off" }),
    { type: "unplug", connector: "X10" },
    step.set({ key: "on" }),
    ...step.read("X10.1:h", "G1:-"),
    ...step
      .read("X10.1:h", "X10.2:h")
      .filter((command) => command.type !== "placeLead" || command.lead === "black"),
    rightReport,
  );
  const result = graded(unplugged);

  it("reads full voltage through a bad ground with nothing connected", () => {
    const readings = unplugged.events.flatMap(({ observation }) =>
      observation.kind === "reading" ? [observation.reading.value ?? 0] : [],
    );
    for (const volts of readings) expect(volts).toBeGreaterThan(12);
  });

  it("gives it no credit as proof of feed or ground", () => {
    const reason = lineOf(result, "method").reasons.find(({ text }) =>
      text.startsWith("No voltage was read"),
    );
    expect(reason).toMatchObject({ effect: 0 });
    expect(result.evidence.proven).toBe(false);
    // The bad contact in the ground is as likely as before, and so are its neighbours.
    for (const place of ["XE3", "X10.2", "W21"]) expect(standing(result)).toContain(place);
  });

  it("gives credit to the same points read under load", () => {
    const reason = lineOf(expert, "method").reasons.find(({ text }) => text.includes("carries its load"));
    expect(reason?.effect).toBeGreaterThan(0.2);
  });
});

describe("the other lines", () => {
  const unsafe = graded(
    work(
      open(context),
      { type: "selectFunction", function: "amps" },
      ...step.read("G1:+", "G1:-"),
      step.set({ key: "on" }),
      { type: "unplug", connector: "X10" },
      { type: "selectFunction", function: "ohms" },
      ...step.redTo("X11.2:h"),
      rightReport,
    ),
  );

  it("each breach of safety costs and cites its line", () => {
    const safety = lineOf(unsafe, "safety");
    expect(lineOf(expert, "safety").share).toBe(1);
    expect(safety.share).toBeLessThan(0.2);
    expect(safety.reasons.map(({ lines }) => lines)).toEqual([[5], [5], [7], [10]]);
    for (const { effect } of safety.reasons) expect(effect).toBeLessThan(0);
  });

  it("invalid tests cost method", () => {
    const invalid = lineOf(unsafe, "method").reasons.filter(({ text }) => text.includes("means nothing"));
    expect(invalid.map(({ lines }) => lines)).toEqual([[10], [5]]);
    for (const { effect } of invalid) expect(effect).toBeLessThan(0);
  });

  it("being quick earns nothing when the cause is wrong", () => {
    expect(lineOf(reasonedButWrong, "efficiency").share).toBe(0);
    expect(lineOf(expert, "efficiency").share).toBe(1);
  });

  it("the report must be at one with itself, and a person reads it", () => {
    const torn = graded(
      work(
        open(context),
        step.submit({ kind: "highResistance", place: "XE3" }, { action: "replaceFuse", place: "F11" }),
      ),
    );
    expect(lineOf(torn, "report").share).toBe(0.5);
    expect(lineOf(expert, "report")).toMatchObject({ share: 1, awaitsPerson: true });
  });

  it("nothing handed in is said, and earns nothing for cause, efficiency and report", () => {
    const nothing = graded(open(context));
    expect(nothing.evidence.named).toBeNull();
    expect(nothing.score).toBe(0);
    expect(lineOf(nothing, "cause").reasons[0]?.text).toContain("No report was handed in");
  });

  it("an assignment may weigh otherwise and set its own pass mark", () => {
    const { events } = work(open(context), rightReport);
    const onlyReport = { cause: 0, method: 0, safety: 0, efficiency: 0, report: 2 };
    const result = grade(context, events, { weights: onlyReport, passMark: 100 });
    expect(result.ok && result.value).toMatchObject({ score: 100, passed: true, passMark: 100 });
  });

  it("every point cites lines that exist", () => {
    for (const result of [expert, unsafe, unproven]) {
      for (const { reasons, share } of result.lines) {
        const sum = reasons.reduce((total, { effect }) => total + effect, 0);
        // The reasons add up to the share, but for what the floor of 0 and the limit on an unproven cause take away.
        expect(Math.max(0, sum)).toBeCloseTo(share, 1);
        for (const line of reasons.flatMap(({ lines }) => lines)) expect(line).toBeGreaterThan(0);
      }
    }
  });

  it("refuses a damaged log with its line", () => {
    const result = grade(context, [...tested.events.slice(0, 3), ...tested.events.slice(4)]);
    expect(result.ok ? null : result.error).toMatchObject({ code: "damaged_log", line: 4 });
  });
});
