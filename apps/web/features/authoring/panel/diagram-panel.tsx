"use client";

import { useRef, useState } from "react";
import { Button } from "@/components/button";
import { EmptyState } from "@/components/empty-state";
import { Select } from "@/components/inputs";
import { useDraft, useDraftActions } from "../draft/draft-context";
import { getAt, setAt } from "../draft/path";
import { recordsOf } from "../fields/new-record";
import { DraftDiagram } from "./draft-diagram";
import { useDrawing } from "./use-drawing";

interface DiagramPanelProps {
  readonly vehicleId: string;
  readonly systemId: string | undefined;
  readonly onSystem: (id: string) => void;
  readonly onChoose: (designator: string) => void;
}

/** The chosen system as it would be drawn now. */
export function DiagramPanel({ vehicleId, systemId, onSystem, onChoose }: DiagramPanelProps) {
  const draft = useDraft();
  const { edit } = useDraftActions();
  const { sheet, isBusy, reason } = useDrawing(vehicleId, draft, systemId);
  const [zoom, setZoom] = useState<number | "whole">();
  const viewport = useRef<HTMLElement>(null);
  const systems = recordsOf(draft, "systems");
  const places = getAt(draft, ["drawing", "placed", systemId ?? ""]);
  const placed = typeof places === "object" && places !== null ? Object.keys(places) : [];
  const whole =
    sheet === undefined || viewport.current === null ? 1 : (viewport.current.clientWidth - 4) / sheet.width;
  // A large sheet opens at a size that can be read, and is scrolled.
  const shown = zoom === "whole" ? Math.min(1, whole) : (zoom ?? Math.min(1, Math.max(0.6, whole)));
  const reset = (id?: string) => {
    if (systemId === undefined) return;
    edit((before) => {
      const left = Object.entries(Object(getAt(before, ["drawing", "placed", systemId])) as object).filter(
        ([own]) => id !== undefined && own !== id,
      );
      const next = left.length === 0 ? undefined : Object.fromEntries(left);
      return setAt(
        before,
        ["drawing", "placed"],
        setAt(Object(getAt(before, ["drawing", "placed"])), [systemId], next),
      );
    }, `drawing of ${systemId}`);
  };
  if (systemId === undefined)
    return (
      <EmptyState title="Nothing to draw yet">
        Add a system and name its components; the drawing follows by itself.
      </EmptyState>
    );
  return (
    <div className="space-y-2">
      <div className="flex flex-wrap items-center gap-2">
        <Select
          aria-label="System drawn"
          className="max-w-56"
          value={systemId}
          onChange={(event) => onSystem(event.target.value)}
        >
          {systems.map(({ id, title }) => (
            <option key={String(id)} value={String(id)}>
              {String(title ?? "") || String(id)}
            </option>
          ))}
        </Select>
        <Button aria-label="Zoom in" onClick={() => setZoom(Math.min(2, shown * 1.25))}>
          +
        </Button>
        <Button aria-label="Zoom out" onClick={() => setZoom(Math.max(0.2, shown * 0.8))}>
          −
        </Button>
        <Button onClick={() => setZoom("whole")}>Whole width</Button>
        {placed.length > 0 && (
          <Button onClick={() => reset()}>Lay out again ({placed.length} placed by hand)</Button>
        )}
      </div>
      <p role="status" className="min-h-6 text-sm text-ink-soft">
        {reason !== undefined
          ? `${sheet === undefined ? "" : "The drawing is an earlier one. "}${reason}`
          : isBusy
            ? "Drawing…"
            : "Drag a part to place it; its wires follow."}
      </p>
      <section
        ref={viewport}
        aria-label="Live drawing"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling area must be reachable by keyboard
        tabIndex={0}
        className="h-[26rem] overflow-auto border border-edge bg-paper"
      >
        {sheet !== undefined && (
          <DraftDiagram
            sheet={sheet}
            zoom={shown}
            placed={placed}
            onChoose={onChoose}
            onReset={reset}
            onPlace={(id, place) =>
              edit((before) => setAt(before, ["drawing", "placed", systemId, id], place), `${id} moved`)
            }
          />
        )}
      </section>
    </div>
  );
}
