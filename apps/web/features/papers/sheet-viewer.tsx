"use client";

import type { SheetReference } from "@probeworthy/diagram";
import { type ReactNode, type RefObject, useEffect, useRef, useState } from "react";
import type { SheetMark } from "@/features/diagram/sheet-marks";
import { type Station, type Trace, traceConductor } from "@/features/diagram/trace";
import type { SeenPlace } from "@/features/diagram/use-opening-view";
import { WiringDiagram, type WiringDiagramProps } from "@/features/diagram/wiring-diagram";
import { PaperSearch } from "./paper-search";
import { PaperState } from "./paper-state";
import type { IndexEntry, PaperIndex } from "./papers-view";
import { TracePanel } from "./trace-panel";
import { sheetAnswerSchema, usePaper } from "./use-paper";

type DrawnProps = Pick<
  WiringDiagramProps,
  | "points"
  | "leads"
  | "unplugged"
  | "pulledFuses"
  | "selected"
  | "onPoint"
  | "onConnector"
  | "onFuse"
  | "hint"
  | "potentials"
>;

export interface SheetViewerProps extends DrawnProps {
  /** Address of the papers: `/api/papers/attempts/…`. */
  readonly papers: string;
  readonly index: PaperIndex;
  /** The sheet that is opened first; it also stands first in the list. */
  readonly initialSystem: string;
  readonly searchField?: RefObject<HTMLInputElement | null>;
  readonly onSystem?: (system: string) => void;
  /** Told when a connector is jumped to or named; stands beside the choice of sheet. */
  readonly tools?: ReactNode;
}

/** The sheets of a vehicle: one is chosen, searched, traced along, and left for another where its lines go on. */
export function SheetViewer(props: SheetViewerProps) {
  const { papers, index, initialSystem, searchField, onSystem, tools, ...drawn } = props;
  const [system, setSystem] = useState(initialSystem);
  const [mark, setMark] = useState<SheetMark>();
  const [trace, setTrace] = useState<Trace>();
  // Where each sheet was left; a ref, because scrolling draws nothing anew.
  const seen = useRef(new Map<string, SeenPlace>());
  const paper = usePaper(`${papers}/sheets/${encodeURIComponent(system)}`, sheetAnswerSchema);
  const choice = useRef<HTMLSelectElement>(null);
  useEffect(() => onSystem?.(system), [system, onSystem]);

  const go = (systems: readonly string[], id: string) => {
    const next = systems.includes(system) ? system : systems[0];
    if (next === undefined) return;
    setSystem(next);
    setMark((before) => ({ id, count: (before?.count ?? 0) + 1 }));
  };
  const startTrace = (id: string) => setTrace(traceConductor(index, id));
  const onFound = (entry: IndexEntry) => {
    go(entry.systems, entry.id);
    if (entry.kind === "conductor") startTrace(entry.id);
  };
  const onReference = (reference: SheetReference) => {
    go([reference.toSystem], reference.toDesignator);
    // The link that was pressed goes away with its sheet.
    choice.current?.focus();
  };
  const first = index.systems.filter(({ id }) => id === initialSystem);
  const others = index.systems.filter(({ id }) => id !== initialSystem);
  const title = index.systems.find(({ id }) => id === system)?.title ?? system;

  return (
    <div>
      <div className="no-print mb-2 flex flex-wrap items-end gap-3">
        <label className="min-w-48">
          <span className="label-small block">Sheet</span>
          <select
            ref={choice}
            value={system}
            onChange={(event) => {
              setSystem(event.target.value);
              setMark(undefined);
            }}
            className="min-h-11 w-full rounded-sheet border border-edge bg-paper px-3 hover:border-ink"
          >
            {[...first, ...others].map(({ id, title: name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
        <PaperSearch index={index} {...(searchField && { field: searchField })} onChoose={onFound} />
        {tools}
      </div>
      {paper.kind === "ready" ? (
        <WiringDiagram
          key={system}
          {...drawn}
          sheet={paper.value.sheet}
          mark={mark}
          traced={trace?.conductors}
          onConductor={(id) => (trace?.conductors.has(id) === true ? setTrace(undefined) : startTrace(id))}
          onReference={onReference}
          seen={seen.current.get(system)}
          onSeen={(place) => seen.current.set(system, place)}
        />
      ) : (
        <PaperState paper={paper} words={`The sheet ${title} is being laid out`} />
      )}
      {trace !== undefined && (
        <TracePanel
          trace={trace}
          onGo={(station: Station) => go(station.systems, station.id)}
          onEnd={() => setTrace(undefined)}
        />
      )}
      <p className="sr-only" role="status">
        {trace === undefined
          ? ""
          : `Path of ${trace.start} marked: ${trace.conductors.size} conductors, ${trace.stations.length} stations listed below the drawing`}
      </p>
    </div>
  );
}
