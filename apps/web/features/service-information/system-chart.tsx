"use client";

import { PaperState } from "@/features/papers/paper-state";
import { chartAnswerSchema } from "@/features/papers/papers-view";
import { usePaper } from "@/features/papers/use-paper";
import { TerminalChartTable } from "./terminal-chart-table";

/** The terminal chart of a system, worked out when it is first looked at. */
export function SystemChart({ papers, system }: { readonly papers: string; readonly system: string }) {
  const paper = usePaper(`${papers}/charts/${encodeURIComponent(system)}`, chartAnswerSchema);
  if (paper.kind !== "ready")
    return <PaperState paper={paper} words="The terminal chart is being worked out" />;
  if (paper.value.rows.length === 0) return <p>This system has no terminal chart yet.</p>;
  return <TerminalChartTable rows={paper.value.rows} />;
}
