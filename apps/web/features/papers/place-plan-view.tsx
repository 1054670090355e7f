"use client";

import type { PlacePlan } from "@probeworthy/diagram";
import clsx from "clsx";
import { z } from "zod";
import diagram from "@/features/diagram/wiring-diagram.module.css";
import { PaperState } from "./paper-state";
import styles from "./place-plan-view.module.css";
import { usePaper } from "./use-paper";

const planAnswerSchema = z.object({
  plan: z.custom<PlacePlan>((value) => typeof value === "object" && value !== null && "fields" in value),
});

export interface PlacePlanViewProps {
  readonly papers: string;
  /** Designators to be picked out: the parts of the system that is read. */
  readonly marked: ReadonlySet<string>;
}

/** The car from above with everything where it sits; the parts of the system are filled, all others are hollow. */
export function PlacePlanView({ papers, marked }: PlacePlanViewProps) {
  const paper = usePaper(`${papers}/places`, planAnswerSchema);
  if (paper.kind !== "ready") return <PaperState paper={paper} words="The plan is being drawn" />;
  const { plan } = paper.value;
  const titles = plan.fields.flatMap(({ title, marks }) =>
    marks.filter(({ id }) => marked.has(id)).map(({ id }) => `${id}: ${title}`),
  );
  return (
    <figure>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling area must be reachable by keyboard */}
      {/* biome-ignore lint/a11y/useSemanticElements: a scrolling part of a figure */}
      <div role="group" aria-label="Component-place plan" tabIndex={0} className={styles.viewport}>
        <svg
          viewBox={`0 0 ${plan.width} ${plan.height}`}
          role="img"
          aria-label={`The car from above. ${titles.join("; ")}`}
          className={clsx(diagram.sheet, styles.plan)}
        >
          {plan.outline.map((points) => (
            <polyline
              key={points.map(({ x, y }) => `${x},${y}`).join(" ")}
              points={points.map(({ x, y }) => `${x},${y}`).join(" ")}
              className={diagram.ink}
            />
          ))}
          {plan.fields.map((field) => (
            <g key={field.zone}>
              <rect
                x={field.x}
                y={field.y}
                width={field.width}
                height={field.height}
                className={diagram.frameLine}
              />
              <text x={field.x + 8} y={field.y + 16} className={diagram.function}>
                {field.title}
              </text>
              {field.marks.map((mark) => {
                const isMarked = marked.has(mark.id);
                return (
                  <g key={mark.id}>
                    <title>{`${mark.id} ${mark.title}${mark.place === undefined ? "" : `, ${mark.place}`}`}</title>
                    <rect {...mark.box} className={clsx(styles.box, isMarked && styles.markedBox)} />
                    <circle
                      cx={mark.x}
                      cy={mark.y}
                      r={5}
                      className={clsx(diagram.ink, isMarked ? diagram.fillInk : diagram.fillPaper)}
                    />
                    <text
                      x={mark.label.x}
                      y={mark.label.y}
                      className={isMarked ? diagram.designator : diagram.terminal}
                    >
                      {mark.id}
                    </text>
                  </g>
                );
              })}
            </g>
          ))}
        </svg>
      </div>
      <figcaption className="mt-1 text-sm text-ink-soft">
        Filled dots and framed designators: parts of this system.
        {plan.unplaced.length > 0 &&
          ` Without a place in the plan: ${plan.unplaced.map(({ id }) => id).join(", ")}.`}
      </figcaption>
    </figure>
  );
}
