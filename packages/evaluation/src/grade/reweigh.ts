import type { GradeResult } from "../grade";
import type { Weights } from "../scenario";

/** What a rubric may set. */
export interface RubricTerms {
  readonly weights: Weights;
  readonly passMark: number;
}

const oneDecimal = (value: number): number => Math.round(value * 10) / 10;

/** Weighs scored lines; from the shares, not from the rounded points, so that rounding is done once. */
export function weigh<Line extends Pick<GradeResult["lines"][number], "line" | "share">>(
  lines: readonly Line[],
  weights: Weights,
): {
  readonly score: number;
  readonly lines: (Line & { readonly weight: number; readonly points: number; readonly maximum: number })[];
} {
  const sum = lines.reduce((total, { line }) => total + weights[line], 0);
  const score = lines.reduce((total, { line, share }) => total + (share * 100 * weights[line]) / sum, 0);
  return {
    score: oneDecimal(score),
    lines: lines.map((line) => {
      const maximum = (100 * weights[line.line]) / sum;
      return {
        ...line,
        weight: weights[line.line],
        points: oneDecimal(line.share * maximum),
        maximum: oneDecimal(maximum),
      };
    }),
  };
}

/**
 * A stored grade under other weights and another pass mark, byte for byte what `grade` would return for the same log
 * with these options and the same engine version: weights do not enter the shares. Nothing is simulated. A grade of
 * another engine version is to be worked out from its log instead.
 */
export function reweigh(result: GradeResult, { weights, passMark }: RubricTerms): GradeResult {
  const { score, lines } = weigh(result.lines, weights);
  const handedIn = result.evidence.named !== null;
  return { ...result, score, passed: handedIn && score >= passMark, passMark, lines };
}
