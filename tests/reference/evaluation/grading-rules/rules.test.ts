import type { GradeResult, Report, RubricLineName } from "@probeworthy/evaluation";
import { rubricPresets } from "@probeworthy/evaluation";
import { grade, reweigh } from "@probeworthy/evaluation/server";
import { describe, expect, it } from "vitest";
import { contextWith, open, scenarioNamed, step, type Worked, work } from "../../../support/attempt-bench";

const scenario = scenarioNamed("gives-up-in-tight-turns");
const badGround = { kind: "seriesResistance", at: "XE3", ohms: 0.35 } as const;
const context = contextWith(scenario, [badGround]);
const rightReport = step.submit({ kind: "highResistance", place: "XE3" }, { action: "cleanGround" });

const grades = new Map<string, GradeResult>();
/** Of the same log the same grade, so each is worked out once. */
const graded = ({ context: worked, events }: Worked): GradeResult => {
  const key = JSON.stringify([worked.variant, events]);
  const known = grades.get(key);
  if (known) return known;
  const result = grade(worked, events);
  if (!result.ok) throw new Error(result.error.message);
  grades.set(key, result.value);
  return result.value;
};
const lineOf = (result: GradeResult, name: RubricLineName) => {
  const line = result.lines.find((candidate) => candidate.line === name);
  if (line === undefined) throw new Error(`no line ${name}`);
  return line;
};

describe("parts cost", () => {
  // Shop owners and columnists, e.g. fenderbender.com "Tales from the bay": good parts fitted before the first loaded test.
  const swap = work(
    open(context),
    { type: "pullFuse", fuse: "F11" },
    { type: "fitFuse", fuse: "F11", fresh: true },
    rightReport,
  );
  const put = work(
    open(context),
    { type: "pullFuse", fuse: "F11" },
    { type: "fitFuse", fuse: "F11", fresh: false },
    rightReport,
  );

  it("a new fuse for one seen to be intact costs, the old one back does not", () => {
    expect(lineOf(graded(swap), "efficiency").share).toBeCloseTo(
      lineOf(graded(put), "efficiency").share - 0.1,
      3,
    );
    const reason = lineOf(graded(swap), "efficiency").reasons.find(({ text }) => text.includes("F11"));
    expect(reason?.lines).toEqual([3]);
  });
});

describe("a second fault behind the first", () => {
  // landyzone.co.uk 393098: a module was replaced, and the car still did not start.
  const both = contextWith(scenario, [badGround, { kind: "fuseBlown", component: "F11" }]);
  const report = (...places: readonly Report["cause"][]): Worked => {
    const [cause, ...further] = places;
    const command = step.submit({ ...cause }, { action: "cleanGround" });
    if (command.type !== "submitReport") throw new Error("a report is submitted");
    return work(open(both), { ...command, report: { ...command.report, further } });
  };
  const explanation = "The readings in the log show it.";
  const ground = { kind: "highResistance", place: "XE3", explanation } as const;
  const fuse = { kind: "fuseOpen", place: "F11", explanation } as const;
  const wrong = { kind: "open", place: "F2", explanation } as const;
  const naming = (...places: readonly Report["cause"][]) =>
    lineOf(graded(report(...places)), "cause").reasons[0];

  it("each cause named counts, and one alone is half of the job", () => {
    const [two, one] = [naming(ground, fuse), naming(ground)];
    expect(two?.effect).toBeCloseTo(2 * (one?.effect ?? 0), 3);
    expect(one?.text).toContain("another fault lay behind");
  });

  it("naming a further place that is good costs", () => {
    expect(naming(ground, fuse, wrong)?.effect).toBeLessThan(naming(ground, fuse)?.effect ?? 0);
  });

  it("the report's causes are one repair group, whatever their order", () => {
    const { evidence } = graded(report(fuse, ground));
    expect(evidence.named).toBe(evidence.truth);
  });
});

describe("invalid tests are kept apart from wrong conclusions", () => {
  it("clearing codes unread costs method and leaves the cause as it was", () => {
    const on = work(open(context), step.set({ key: "on", engineSpeed: 850 }));
    const read = graded(work(on, step.codes("A1"), { type: "clearCodes", module: "A1" }, rightReport));
    const unread = graded(work(on, { type: "clearCodes", module: "A1" }, step.codes("A1"), rightReport));
    const reason = (result: GradeResult) =>
      lineOf(result, "method").reasons.find(({ text }) => text.includes("cleared before they were read"));
    expect(reason(unread)).toMatchObject({ effect: -0.1, lines: [3] });
    expect(reason(read)).toBeUndefined();
    expect(lineOf(unread, "cause").reasons[0]?.effect).toBe(lineOf(read, "cause").reasons[0]?.effect);
  });
});

describe("a changed rubric", () => {
  const worked = work(
    open(context),
    step.set({ key: "on", engineSpeed: 850 }),
    step.codes("A1"),
    rightReport,
  );

  it("weighing a stored grade anew gives the bytes of grading the log", () => {
    const terms = rubricPresets.skillCheck;
    const fromLog = grade(context, worked.events, terms);
    if (!fromLog.ok) throw new Error(fromLog.error.message);
    expect(JSON.stringify(reweigh(graded(worked), terms))).toBe(JSON.stringify(fromLog.value));
  });
});
