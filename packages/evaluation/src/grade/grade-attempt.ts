import { ok, type Result } from "@probeworthy/vehicle";
import { replay } from "../attempt-state";
import type { AttemptContext } from "../context";
import { type GradeResult, gradeResultSchema } from "../grade";
import { type RubricLineName, rubricLines, type Weights } from "../scenario";
import { engineVersion } from "../version";
import { checkLog, type GradeError } from "./check-log";
import { weighEvidence } from "./evidence";
import { scoreCause } from "./lines/cause";
import { scoreEfficiency } from "./lines/efficiency";
import type { Attempted, Scored } from "./lines/line";
import { scoreMethod } from "./lines/method";
import { scoreReport } from "./lines/report";
import { scoreSafety } from "./lines/safety";
import { loadedIn } from "./loaded";
import { judgeNaming } from "./naming";
import { finish, type Steps, stage } from "./progress";
import { measureProof } from "./proof";
import { groupTitle, namedGroup, truthOf } from "./repair-group";
import { weigh } from "./reweigh";

/** What an assignment may set otherwise than the scenario. */
export interface GradeOptions {
  readonly weights?: Weights;
  readonly passMark?: number;
}

const titles: Readonly<Record<RubricLineName, string>> = {
  cause: "Cause, and its proof",
  method: "Method",
  safety: "Safety",
  efficiency: "Efficiency",
  report: "Report",
};

/**
 * Grades a log against its variant: five lines, each with reasons that cite log lines, and what the readings ruled out
 * step by step. Pure and repeatable; rests on the logged readings as displayed. A log without a report is graded too:
 * it names no cause. Takes a second or two of computing; see `gradeSteps` where others wait meanwhile.
 * Errors: a damaged log, with the line.
 */
export const grade = (
  context: AttemptContext,
  log: readonly unknown[],
  options: GradeOptions = {},
): Result<GradeResult, GradeError> => finish(gradeSteps(context, log, options));

/** Part of the work that goes into weighing the evidence; comparing what stands with the truth takes the rest. */
const weighing = 0.85;

/**
 * `grade` in pieces of some milliseconds (a long stretch of shop time is one piece): yields how much is done, 0 … 1 and
 * never less than before, and returns what `grade` returns. Other cars may be simulated
 * between two pieces, other logs graded: neither changes the result.
 */
export function* gradeSteps(
  context: AttemptContext,
  log: readonly unknown[],
  options: GradeOptions = {},
): Steps<Result<GradeResult, GradeError>> {
  const checked = checkLog(log);
  if (!checked.ok) return checked;
  const events = checked.value;
  const { scenario, document, variant } = context;
  const final = replay(events);
  const evidence = yield* stage(weighEvidence(context, events), 0, weighing);
  const proof = yield* stage(measureProof(context, evidence), weighing, 1);
  const naming =
    final.report === null ? { share: 0, text: "No cause is named." } : judgeNaming(context, final.report);
  const attempted: Attempted = {
    context,
    events,
    final,
    evidence,
    proof,
    naming: naming.share,
    loaded: loadedIn(document),
  };
  const scored: Readonly<Record<RubricLineName, Scored>> = {
    cause: scoreCause(attempted, naming.text),
    method: scoreMethod(attempted),
    safety: scoreSafety(attempted),
    efficiency: scoreEfficiency(attempted),
    report: scoreReport(attempted),
  };
  const weights = options.weights ?? scenario.weights;
  const { score, lines } = weigh(
    rubricLines.map((line) => {
      const { share, reasons, awaitsPerson } = scored[line];
      const cited = reasons.map((reason) => ({ ...reason, lines: [...reason.lines] }));
      return { line, title: titles[line], share, reasons: cited, awaitsPerson };
    }),
    weights,
  );
  const passMark = options.passMark ?? scenario.passMark;
  return ok(
    gradeResultSchema.parse({
      engineVersion,
      score,
      passed: final.report !== null && score >= passMark,
      passMark,
      lines,
      evidence: {
        candidates: evidence.groups.map((id) => ({ id, title: groupTitle(id, document) })),
        steps: evidence.steps,
        truth: evidence.truth,
        named: final.report === null ? null : namedGroup(final.report),
        proven: proof.proven && naming.share > 0.5,
      },
      truth: truthOf(variant.faults, variant.normal, document),
    } satisfies GradeResult | unknown),
  );
}
