import { groupTitle } from "../repair-group";
import { type Attempted, type Reason, type Scored, score } from "./line";

/** Shares of the line when the cause is not proven; together never more than half. */
const forNaming = 0.25;
const forNarrowing = 0.4;
const unprovenLimit = 0.5;

/**
 * Cause: named and proven earns the line (a right place with the wrong kind its part of it). Without proof at most half:
 * a quarter for the name, and up to 40 % for how far the readings narrowed it down, so that a guess that happens to be
 * right stays below sound reasoning that ends at the wrong place.
 */
export function scoreCause(
  { context, evidence, proof, naming, final }: Attempted,
  namingText: string,
): Scored {
  if (final.report === null) {
    return score(0, [{ text: "No report was handed in: no cause is named.", effect: 0, lines: [] }]);
  }
  const telling = evidence.steps.filter(({ ruledOut, line }) => line > 1 && ruledOut.length > 0);
  const lines = telling.map(({ line }) => line);
  const proves = proof.proven && naming > 0.5;
  const share = proves ? naming : Math.min(unprovenLimit, forNaming * naming + forNarrowing * proof.narrowed);
  const reasons: Reason[] = [
    { text: namingText, effect: proves ? naming / 2 : forNaming * naming, lines: [final.sequence] },
  ];
  const titles = proof.rivals.slice(0, 4).map((group) => groupTitle(group, context.document));
  const more = proof.rivals.length - titles.length;
  if (proof.proven) {
    const text = !proves
      ? "The readings leave one cause only, and it is not the one named."
      : proof.equivalent.length === 0
        ? "Proven: the readings leave no other cause."
        : equivalentText(proof.equivalent.length);
    reasons.push({ text, effect: proves ? naming / 2 : share - forNaming * naming, lines });
  } else {
    reasons.push({
      text: `Not proven: the readings also allow ${titles.join("; ")}${more > 0 ? `; and ${more} more` : ""}.`,
      effect: share - forNaming * naming,
      lines,
    });
  }
  return score(share, reasons);
}

const equivalentText = (count: number) =>
  `Proven as far as can be: ${count === 1 ? "one other cause looks" : `${count} other causes look`} the same at every point that can be reached.`;
