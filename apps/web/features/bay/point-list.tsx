"use client";

import type { LearnerView } from "@probeworthy/evaluation";
import { type RefObject, useMemo, useState } from "react";
import { Field } from "@/components/field";
import { TextInput } from "@/components/inputs";
import { type Lead, LeadMarker } from "./lead-controls";

export interface PointListProps {
  readonly view: Pick<LearnerView, "points" | "bench">;
  readonly armed: Lead;
  readonly searchField: RefObject<HTMLInputElement | null>;
  readonly onPlace: (lead: Lead, point: string) => void;
}

const most = 40;

/** Every test point in words: the way to place leads without the drawing. */
export function PointList({ view, armed, searchField, onPlace }: PointListProps) {
  const [query, setQuery] = useState("");
  const found = useMemo(() => searchPoints(view.points, query), [view.points, query]);
  const shown = found.slice(0, most);
  return (
    <div>
      <Field
        label="Search test points"
        hint={`Designator, connector, cavity, conductor or title. Enter puts the ${armed} lead on the first one that can be reached.`}
      >
        <TextInput
          ref={searchField}
          type="search"
          value={query}
          onChange={(event) => setQuery(event.target.value)}
          onKeyDown={(event) => {
            const first = shown.find((point) => point.accessible);
            if (event.key !== "Enter" || first === undefined) return;
            event.preventDefault();
            onPlace(armed, first.id);
          }}
        />
      </Field>
      <p role="status" className="mt-2 text-sm text-ink-soft">
        {found.length === 0 && "No point matches."}
        {found.length > most && `${found.length} points match; the first ${most} are listed.`}
        {found.length > 0 &&
          found.length <= most &&
          `${found.length} ${found.length === 1 ? "point" : "points"}.`}
      </p>
      <ul className="mt-2 divide-y divide-hairline border-y border-hairline">
        {shown.map((point) => (
          <li key={point.id} className="flex flex-wrap items-center justify-between gap-x-3 gap-y-1 py-1">
            <span className="min-w-0 flex-1 basis-64">
              <code className="mr-2 font-semibold">{point.id}</code>
              {point.title}
              {point.conductor !== undefined && <span className="text-ink-soft"> · {point.conductor}</span>}
              {!point.accessible && <span className="block text-sm text-ink-soft">{point.reason}</span>}
            </span>
            <span className="flex gap-1">
              {(["red", "black"] as const).map((lead) => (
                <button
                  key={lead}
                  type="button"
                  disabled={!point.accessible}
                  aria-pressed={view.bench[lead] === point.id}
                  aria-label={`Place the ${lead} lead on ${point.title}`}
                  onClick={() => onPlace(lead, point.id)}
                  className="flex size-11 cursor-pointer items-center justify-center rounded-sheet border border-transparent hover:border-ink disabled:cursor-not-allowed disabled:opacity-40 aria-pressed:border-copper-fill aria-pressed:bg-panel"
                >
                  <LeadMarker lead={lead} sign={lead === "red" ? "+" : "−"} />
                </button>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}

type Point = LearnerView["points"][number];

/** All words must occur. Ids that begin with the first word come first, and of those the ones a lead can reach. */
export function searchPoints(points: readonly Point[], query: string): readonly Point[] {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const text = (point: Point) =>
    `${point.id} ${point.title} ${point.owner} ${point.conductor ?? ""}`.toLowerCase();
  const rank = (point: Point) =>
    (point.id.toLowerCase().startsWith(words[0] ?? "") ? 0 : 2) + (point.accessible ? 0 : 1);
  return points
    .filter((point) => words.every((word) => text(point).includes(word)))
    .sort((a, b) => rank(a) - rank(b));
}
