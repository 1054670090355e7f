"use client";

import type { LearnerView } from "@probeworthy/evaluation";
import { useCallback, useMemo, useState } from "react";
import { Button } from "@/components/button";
import { describeCommand, formatShopTime } from "@/features/bay/log-words";
import { createNames } from "@/features/bay/names";
import { PaperState } from "@/features/papers/paper-state";
import { paperIndexSchema } from "@/features/papers/papers-view";
import { usePaper } from "@/features/papers/use-paper";
import { PotentialSheet } from "./potential-sheet";

export interface LogPotentialsProps {
  readonly papers: string;
  readonly work: LearnerView;
}

/** The car as it really stood after a line of the log. Opened on request, because laying out and settling take a while. */
export function LogPotentials(props: LogPotentialsProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <section aria-labelledby="log-potentials" className="no-print">
      <h2 id="log-potentials" className="mb-2">
        Inside the car, line by line
      </h2>
      {isOpen ? (
        <OpenedPotentials {...props} />
      ) : (
        <>
          <p className="mb-2 max-w-prose">
            The wiring diagram with the voltage at every point and the current in every conductor, as the car
            stood after each line of the log.
          </p>
          <Button onClick={() => setOpen(true)}>Show the drawing</Button>
        </>
      )}
    </section>
  );
}

function OpenedPotentials({ papers, work }: LogPotentialsProps) {
  const { log } = work;
  const names = useMemo(() => createNames(work), [work]);
  const index = usePaper(`${papers}/index`, paperIndexSchema);
  const [line, setLine] = useState(log[0]?.sequence ?? 1);
  const inputFor = useCallback((shown: string) => ({ of: "attempt" as const, system: shown, line }), [line]);
  if (index.kind !== "ready") return <PaperState paper={index} words="The papers are being fetched" />;
  const last = log.at(-1)?.sequence ?? 1;
  const step = log.find(({ sequence }) => sequence === line);
  return (
    <div className="space-y-3">
      <div className="flex flex-wrap items-center gap-3">
        <Button disabled={line <= 1} onClick={() => setLine(line - 1)}>
          Line before
        </Button>
        <Button disabled={line >= last} onClick={() => setLine(line + 1)}>
          Line after
        </Button>
        <input
          type="range"
          aria-label="Line of the log"
          min={1}
          max={last}
          value={line}
          onChange={(event) => setLine(Number(event.target.value))}
          className="h-11 min-w-40 flex-1"
        />
        <p className="min-w-60" aria-live="polite">
          <span className="font-mono">
            line {line} of {last}
            {step !== undefined && `, ${formatShopTime(step.elapsedSeconds)}`}
          </span>
          {step !== undefined && (
            <span className="block text-sm">{describeCommand(step.command, names)}</span>
          )}
        </p>
      </div>
      <PotentialSheet
        papers={papers}
        index={index.value}
        initialSystem={work.job.system}
        inputFor={inputFor}
      />
    </div>
  );
}
