"use client";

import type { Sheet, SheetReference } from "@probeworthy/diagram";
import clsx from "clsx";
import { type CSSProperties, type KeyboardEvent, useMemo, useRef, useState } from "react";
import type { Potentials } from "@/features/potentials/potentials-view";
import { LeadMarker } from "./lead-marker";
import { type Direction, nearestTarget } from "./nearest-target";
import { SheetArt } from "./sheet-art";
import { MarkFrame, type SheetMark } from "./sheet-marks";
import { TargetButton } from "./target-button";
import { conductorAt, conductorWords, type PointState, type Target, targetsOf } from "./targets";
import { useDrag } from "./use-drag";
import { type SeenPlace, useLeadInView, useMarkInView, useOpeningView } from "./use-opening-view";
import { useZoom } from "./use-zoom";
import styles from "./wiring-diagram.module.css";

export interface WiringDiagramProps {
  readonly sheet: Sheet;
  /** Every test point that may be touched in this attempt, with its state now. */
  readonly points: readonly PointState[];
  readonly leads: { readonly red?: string | undefined; readonly black?: string | undefined };
  readonly unplugged: readonly string[];
  readonly pulledFuses: readonly string[];
  /** Point ids to be marked: the chosen ones, those a log line speaks of. */
  readonly selected?: readonly string[];
  /** Enter, Space or a click on an accessible point. */
  readonly onPoint?: (pointId: string) => void;
  readonly onConnector?: (connectorId: string) => void;
  readonly onFuse?: (fuseId: string) => void;
  /** Said beside the zoom buttons: what a press does now, `Red lead next`. */
  readonly hint?: string;
  /** What a search or a reference has led to. */
  readonly mark?: SheetMark | undefined;
  /** Conductors of the traced path. */
  readonly traced?: ReadonlySet<string> | undefined;
  /** A click on a conductor, or T on one of its test points. */
  readonly onConductor?: (conductorId: string) => void;
  readonly onReference?: (reference: SheetReference) => void;
  readonly potentials?: Potentials | undefined;
  /** Where the reader left this sheet, and a way to say so again. */
  readonly seen?: SeenPlace | undefined;
  readonly onSeen?: (place: SeenPlace) => void;
}

interface Name {
  readonly key: string;
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly reason?: string;
}

const directions: Readonly<Record<string, Direction>> = {
  ArrowUp: "up",
  ArrowDown: "down",
  ArrowLeft: "left",
  ArrowRight: "right",
};

/** The wiring diagram of one system. Scrolls by touch, wheel, drag and arrow keys; zooms by buttons, + − 0 and Ctrl + wheel. */
export function WiringDiagram(props: WiringDiagramProps) {
  const { sheet, points, leads, unplugged, pulledFuses, selected = [] } = props;
  const viewport = useRef<HTMLDivElement>(null);
  const { zoom, zoomBy, reset, fit } = useZoom(viewport, props.seen?.zoom);
  const { isDragging, wasDragged, handlers } = useDrag(viewport);
  useOpeningView(viewport, sheet, leads.red ?? leads.black, props.seen);
  useLeadInView(viewport, sheet, leads.red, zoom);
  useLeadInView(viewport, sheet, leads.black, zoom);
  useMarkInView(viewport, sheet, props.mark, zoom);
  const [active, setActive] = useState<string>();
  const [name, setName] = useState<Name>();
  const targets = useMemo(
    () => targetsOf(sheet, { points, unplugged, pulledFuses }),
    [sheet, points, unplugged, pulledFuses],
  );
  const tabStop = targets.find((target) => target.key === active) ?? targets[0];
  const apart = new Set([...unplugged, ...pulledFuses]);

  const press = (target: Target) => {
    if (target.reason !== undefined) return;
    if (target.kind === "point") props.onPoint?.(target.id);
    else if (target.kind === "connector") props.onConnector?.(target.id);
    else if (target.kind === "fuse") props.onFuse?.(target.id);
    else {
      const reference = sheet.references?.find(({ id }) => id === target.id);
      if (reference !== undefined) props.onReference?.(reference);
    }
  };
  const move = (from: Target, event: KeyboardEvent) => {
    if (event.key === "Escape") setName(undefined);
    if (event.key === "t" && from.kind === "point") {
      const conductor = conductorAt(sheet, from.id);
      if (conductor !== undefined) props.onConductor?.(conductor);
    }
    const direction = directions[event.key];
    if (direction === undefined) return;
    event.preventDefault();
    const next = nearestTarget(targets, from, direction);
    if (next === undefined) return;
    const element = viewport.current?.querySelector<SVGGElement>(`[data-target="${CSS.escape(next.key)}"]`);
    element?.focus();
    element?.scrollIntoView({ block: "nearest", inline: "nearest" });
  };
  const zoomKeys = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === "+" || event.key === "=") zoomBy(1.25);
    else if (event.key === "-") zoomBy(0.8);
    else if (event.key === "0") reset();
    else return;
    event.preventDefault();
  };
  const conductors = useMemo(() => new Map(sheet.conductors.map((one) => [one.id, one])), [sheet]);
  const showConductor = (id: string, place: { readonly x: number; readonly y: number } | undefined) => {
    const conductor = conductors.get(id);
    setName((shown) =>
      place !== undefined && conductor !== undefined
        ? { key: id, ...place, text: conductorWords(sheet, conductor, props.potentials) }
        : shown?.key === id
          ? undefined
          : shown,
    );
  };
  const showName = (target: Target) => (isShown: boolean) =>
    setName((shown) => {
      if (!isShown) return shown?.key === target.key ? undefined : shown;
      const { key, x, y, name: text, reason } = target;
      return { key, x: x * zoom, y: y * zoom, text, ...(reason === undefined ? {} : { reason }) };
    });

  // Custom properties, so that the print styles can take over the size.
  const canvasSize = {
    "--sheet-width": `${sheet.width * zoom}px`,
    "--sheet-height": `${sheet.height * zoom}px`,
  } as CSSProperties;

  return (
    <figure className={styles.frame} aria-label={`Wiring diagram: ${sheet.title}`}>
      <div className={styles.toolbar}>
        <button type="button" className={styles.tool} aria-label="Zoom in" onClick={() => zoomBy(1.25)}>
          +
        </button>
        <button type="button" className={styles.tool} aria-label="Zoom out" onClick={() => zoomBy(0.8)}>
          −
        </button>
        <button type="button" className={styles.tool} onClick={() => fit(sheet.width)}>
          Whole width
        </button>
        <button type="button" className={styles.tool} onClick={() => fit(sheet.width, sheet.height)}>
          Whole sheet
        </button>
        <button type="button" className={styles.tool} onClick={reset}>
          Full size
        </button>
        <output className={styles.zoomValue} aria-label="Zoom">
          {Math.round(zoom * 100)} %
        </output>
        {props.hint !== undefined && <span className={styles.hint}>{props.hint}</span>}
      </div>
      {/* biome-ignore lint/a11y/useSemanticElements: a scrolling part of a figure, focusable so that keys can scroll it */}
      <div
        ref={viewport}
        role="group"
        aria-label="Drawing; arrow keys scroll, plus and minus zoom"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling area must be reachable by keyboard
        tabIndex={0}
        className={clsx(styles.viewport, isDragging && styles.dragging)}
        onKeyDown={zoomKeys}
        onScroll={({ currentTarget: { scrollLeft, scrollTop, clientWidth } }) => {
          if (clientWidth > 0) props.onSeen?.({ zoom, left: scrollLeft, top: scrollTop });
        }}
        {...handlers}
      >
        <div className={styles.canvas} style={canvasSize}>
          {/* biome-ignore lint/a11y/useSemanticElements: a drawing with buttons in it has no HTML element of its own */}
          <svg
            className={styles.sheet}
            viewBox={`0 0 ${sheet.width} ${sheet.height}`}
            role="group"
            aria-label="Test points; arrow keys move between them, Enter places a lead"
          >
            <SheetArt
              sheet={sheet}
              apart={apart}
              traced={props.traced}
              potentials={props.potentials}
              onHover={showConductor}
              onConductor={
                props.onConductor &&
                ((id) => {
                  if (!wasDragged.current) props.onConductor?.(id);
                })
              }
            />
            {props.mark !== undefined && <MarkFrame sheet={sheet} mark={props.mark} />}
            {targets.map((target) => (
              <TargetButton
                key={target.key}
                target={target}
                isSelected={
                  target.kind === "point" &&
                  (selected.includes(target.id) || leads.red === target.id || leads.black === target.id)
                }
                isApart={apart.has(target.id)}
                isTabStop={target === tabStop}
                onPress={(isPointer) => {
                  if (!isPointer || !wasDragged.current) press(target);
                }}
                onFocus={() => setActive(target.key)}
                onName={showName(target)}
                onKeyDown={(event) => move(target, event)}
              />
            ))}
            {(["black", "red"] as const).map((lead) => {
              const point = sheet.testPoints.find((candidate) => candidate.pointId === leads[lead]);
              return point === undefined ? null : (
                <LeadMarker key={lead} lead={lead} x={point.x} y={point.y} side={point.side} />
              );
            })}
          </svg>
          {name !== undefined && (
            <div
              className={clsx(styles.label, name.y < 90 ? styles.labelBelow : styles.labelAbove)}
              style={{ left: Math.max(130, Math.min(name.x, sheet.width * zoom - 130)), top: name.y }}
              aria-hidden="true"
            >
              {name.text}
              {name.reason !== undefined && <div className={styles.labelReason}>{name.reason}</div>}
            </div>
          )}
        </div>
      </div>
    </figure>
  );
}
