"use client";

import type { ConnectorFace, FaceCavity } from "@probeworthy/diagram";
import clsx from "clsx";
import { type KeyboardEvent, useRef, useState } from "react";
import { themedColour } from "./colours";
import { type Direction, nearestTarget } from "./nearest-target";
import type { PointState } from "./targets";
import styles from "./wiring-diagram.module.css";

export interface ConnectorFaceViewProps {
  readonly face: ConnectorFace;
  readonly points: readonly PointState[];
  readonly leads: { readonly red?: string | undefined; readonly black?: string | undefined };
  readonly selected?: readonly string[];
  readonly onPoint?: (pointId: string) => void;
}

const arrows: Readonly<Record<string, Direction>> = {
  ArrowUp: "up",
  ArrowDown: "down",
  ArrowLeft: "left",
  ArrowRight: "right",
};

/** Cavity number, conductor colour and code; a cross for a cavity with nothing in it. */
function CavityDrawing({ cavity, lead }: { readonly cavity: FaceCavity; readonly lead: string | undefined }) {
  const { x, y, width, height, colour } = cavity;
  const [base, stripe] = colour ?? [];
  // The spaces draw nothing: they keep what is printed from running together as one word.
  return (
    <>
      <rect {...{ x, y, width, height }} rx={3} className={styles.cavityBox} />
      {cavity.empty && (
        <path d={`M ${x + 8} ${y + 18} l 28 20 m 0 -20 l -28 20`} className={styles.emptyCross} fill="none" />
      )}
      {base !== undefined && (
        <>
          <rect
            x={x + 6}
            y={y + 31}
            width={width - 12}
            height={8}
            className={styles.fine}
            style={{ fill: themedColour(base) }}
          />
          {stripe !== undefined && (
            <rect
              x={x + 6}
              y={y + 33.5}
              width={width - 12}
              height={3}
              style={{ fill: themedColour(stripe) }}
            />
          )}
          <text x={x + width / 2} y={y + 27} textAnchor="middle" className={styles.cavity}>
            {colour?.join("")}
          </text>{" "}
        </>
      )}
      <text x={x + 5} y={y + 13} className={styles.terminal}>
        {cavity.cavity}
      </text>{" "}
      {lead !== undefined && (
        <text x={x + width - 5} y={y + 14} textAnchor="end" className={styles.designator}>
          {lead}
        </text>
      )}
    </>
  );
}

/** A connector seen from the wire side or the mating side; each cavity that has a test point can be pressed. */
export function ConnectorFaceView({ face, points, leads, selected = [], onPoint }: ConnectorFaceViewProps) {
  const [active, setActive] = useState<string>();
  const svg = useRef<SVGSVGElement>(null);
  const known = new Map(points.map((point) => [point.id, point]));
  const pointOf = (cavity: FaceCavity) => (face.view === "wire" ? cavity.harnessPoint : cavity.facingPoint);
  const targets = face.cavities
    .filter((cavity) => !cavity.empty)
    .map((cavity) => ({
      key: pointOf(cavity),
      x: cavity.x + cavity.width / 2,
      y: cavity.y + cavity.height / 2,
      cavity,
    }));
  const tabStop = targets.find((target) => target.key === active)?.key ?? targets[0]?.key;

  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing with buttons in it has no HTML element of its own
    <svg
      ref={svg}
      role="group"
      aria-label={`${face.connector}, ${face.title}, seen from the ${face.view === "wire" ? "wire" : "mating"} side`}
      className={styles.face}
      viewBox={`0 0 ${face.width} ${face.height}`}
      width={face.width}
      height={face.height}
    >
      <rect x={1} y={1} width={face.width - 2} height={face.height - 2} rx={6} className={styles.housing} />
      {face.cavities
        .filter((cavity) => cavity.empty)
        .map((cavity) => (
          <CavityDrawing key={cavity.cavity} cavity={cavity} lead={undefined} />
        ))}
      {targets.map((target) => {
        const { key, cavity } = target;
        const facts = known.get(key);
        const isClosed = facts === undefined || !facts.accessible;
        const reason = isClosed ? (facts?.reason ?? "This place cannot be reached with a lead.") : undefined;
        const colour = cavity.colour?.join("");
        const isSelected = selected.includes(key) || leads.red === key || leads.black === key;
        const lead = [leads.red === key ? "+" : "", leads.black === key ? "−" : ""].join("");
        // Begins with what is printed, so that it can be called by what one sees.
        const printed = [colour, cavity.cavity, lead]
          .filter((part) => part !== undefined && part !== "")
          .join(" ");
        const name = `${printed}: ${facts?.title ?? `cavity ${cavity.cavity}`}`;
        const press = () => {
          if (!isClosed) onPoint?.(key);
        };
        const onKeyDown = (event: KeyboardEvent) => {
          if (event.key === "Enter" || event.key === " ") {
            event.preventDefault();
            press();
            return;
          }
          const direction = arrows[event.key];
          if (direction === undefined) return;
          event.preventDefault();
          const next = nearestTarget(targets, target, direction);
          if (next === undefined) return;
          svg.current?.querySelector<SVGGElement>(`[data-target="${CSS.escape(next.key)}"]`)?.focus();
        };
        return (
          // biome-ignore lint/a11y/useSemanticElements: there is no button element inside SVG
          <g
            key={key}
            role="button"
            tabIndex={key === tabStop ? 0 : -1}
            aria-label={reason === undefined ? name : `${name}. ${reason}`}
            aria-disabled={isClosed || undefined}
            aria-pressed={isSelected}
            data-target={key}
            className={clsx(styles.target, isSelected && styles.selected)}
            onClick={press}
            onFocus={() => setActive(key)}
            onKeyDown={onKeyDown}
          >
            <CavityDrawing cavity={cavity} lead={lead === "" ? undefined : lead} />
            <rect
              x={cavity.x - 3}
              y={cavity.y - 3}
              width={cavity.width + 6}
              height={cavity.height + 6}
              rx={4}
              className={styles.ring}
            />
          </g>
        );
      })}
    </svg>
  );
}
