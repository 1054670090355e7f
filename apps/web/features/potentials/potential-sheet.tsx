"use client";

import { useMemo, useState } from "react";
import { ProblemNotice } from "@/components/problem-notice";
import { NoticedList } from "@/features/bay/noticed-list";
import type { PaperIndex } from "@/features/papers/papers-view";
import { SheetViewer } from "@/features/papers/sheet-viewer";
import { PotentialLegend } from "./potential-legend";
import type { PotentialsInput } from "./potentials-view";
import { usePotentials } from "./use-potentials";

export interface PotentialSheetProps {
  readonly papers: string;
  readonly index: PaperIndex;
  readonly initialSystem: string;
  /** What to work out for a sheet. Keep it the same function while nothing has changed. */
  readonly inputFor: (system: string) => PotentialsInput;
}

const noLeads = {};

/** A sheet coloured by computed potential, with its scale and what one would notice of the car. */
export function PotentialSheet({ papers, index, initialSystem, inputFor }: PotentialSheetProps) {
  const [system, setSystem] = useState(initialSystem);
  const { value, system: workedFor, isBusy, problem } = usePotentials(papers, inputFor(system));
  // Figures of another sheet say nothing about this one.
  const shown = workedFor === system ? value : undefined;
  const points = useMemo(
    () =>
      Object.entries(shown?.points ?? {}).map(([id, volts]) => ({
        id,
        title: `${id}: ${volts.toFixed(2)} V`,
        accessible: true,
      })),
    [shown],
  );
  return (
    <div aria-busy={isBusy} className="min-w-0">
      {problem !== undefined && <ProblemNotice problem={problem} />}
      <SheetViewer
        papers={papers}
        index={index}
        initialSystem={initialSystem}
        onSystem={setSystem}
        points={points}
        leads={noLeads}
        unplugged={shown?.apart.unplugged ?? []}
        pulledFuses={shown?.apart.pulledFuses ?? []}
        potentials={shown}
        hint={isBusy ? "Working it out …" : "Computed from the model"}
      />
      {shown !== undefined && (
        <>
          <PotentialLegend supplyVolts={shown.supplyVolts} />
          <section aria-label="What one notices of the car" className="mt-3" data-testid="noticed">
            <NoticedList noticed={shown.noticed} own={shown.noticedFirst} columns />
          </section>
        </>
      )}
    </div>
  );
}
