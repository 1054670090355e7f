import { Button } from "@/components/button";
import { ProblemNotice } from "@/components/problem-notice";
import type { Paper } from "./use-paper";

/** What stands in place of a paper that is not there yet, or could not be fetched. As high as a drawing, so nothing jumps. */
export function PaperState({
  paper,
  words,
}: {
  readonly paper: Exclude<Paper<unknown>, { kind: "ready" }>;
  /** `The drawing is being laid out`. */
  readonly words: string;
}) {
  if (paper.kind === "loading") {
    return (
      <p
        role="status"
        className="flex min-h-96 items-center justify-center border border-dashed border-edge text-ink-soft"
      >
        {words} …
      </p>
    );
  }
  return (
    <div className="min-h-96">
      <ProblemNotice problem={paper.problem} action={<Button onClick={paper.retry}>Try again</Button>} />
    </div>
  );
}
