"use client";

import type { LearnerView } from "@probeworthy/evaluation";
import { useId, useMemo, useState } from "react";

export interface PlacePickerProps {
  readonly label: string;
  readonly places: LearnerView["places"];
  readonly value: string;
  readonly onChoose: (id: string) => void;
  readonly error?: string | undefined;
  readonly required?: boolean;
}

/** A list with a search above it: long, but every place can be reached by typing a few letters of it. */
export function PlacePicker({ label, places, value, onChoose, error, required = true }: PlacePickerProps) {
  const id = useId();
  const [query, setQuery] = useState("");
  const groups = useMemo(() => groupPlaces(places, query, value), [places, query, value]);
  const chosen = places.find((place) => place.id === value);
  return (
    <fieldset>
      <legend className="font-semibold">
        {label}
        {!required && <span className="font-normal text-ink-soft"> (optional)</span>}
      </legend>
      <input
        type="search"
        value={query}
        onChange={(event) => setQuery(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === "Enter") event.preventDefault();
        }}
        aria-label={`${label}: search the list`}
        aria-controls={id}
        placeholder="Search: F3, X2.4, ground …"
        className="mt-1 block min-h-11 w-full rounded-t-sheet border border-b-0 border-edge bg-paper px-3 py-2 placeholder:text-ink-soft"
      />
      <select
        id={id}
        size={6}
        value={value}
        aria-label={label}
        aria-invalid={error !== undefined || undefined}
        aria-describedby={`${id}-chosen`}
        onChange={(event) => onChoose(event.target.value)}
        className="block w-full rounded-b-sheet border border-edge bg-paper px-2 py-1 aria-invalid:border-2 aria-invalid:border-ink"
      >
        {/* Without it the browser would show the first place as chosen, and choosing that one would change nothing. */}
        <option value="" hidden>
          Nothing chosen
        </option>
        {groups.map(([group, members]) => (
          <optgroup key={group} label={group}>
            {members.map((place) => (
              <option key={place.id} value={place.id} className="min-h-6 py-0.5">
                {place.title}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      <p id={`${id}-chosen`} className="mt-1 min-h-6 text-sm">
        {error === undefined ? (
          chosen === undefined ? (
            <span className="text-ink-soft">Nothing chosen yet</span>
          ) : (
            <>Chosen: {chosen.title}</>
          )
        ) : (
          <strong>{error}</strong>
        )}
      </p>
    </fieldset>
  );
}

type Place = LearnerView["places"][number];

function groupPlaces(places: readonly Place[], query: string, value: string): [string, Place[]][] {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  const groups = new Map<string, Place[]>();
  for (const place of places) {
    const text = `${place.id} ${place.title} ${place.group}`.toLowerCase();
    if (place.id !== value && !words.every((word) => text.includes(word))) continue;
    groups.set(place.group, [...(groups.get(place.group) ?? []), place]);
  }
  return [...groups];
}
