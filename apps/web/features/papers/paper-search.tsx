"use client";

import { type KeyboardEvent, type RefObject, useId, useState } from "react";
import type { IndexEntry, PaperIndex } from "./papers-view";
import { searchPapers } from "./search-papers";

export interface PaperSearchProps {
  readonly index: PaperIndex;
  readonly field?: RefObject<HTMLInputElement | null>;
  readonly onChoose: (entry: IndexEntry) => void;
}

/** Finds anything on any sheet. Arrow keys go through what was found, Enter goes there. */
export function PaperSearch({ index, field, onChoose }: PaperSearchProps) {
  const id = useId();
  const [asked, setAsked] = useState("");
  const [isOpen, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const found = searchPapers(index, asked);
  const titles = new Map(index.systems.map((system) => [system.id, system.title]));
  const isShown = isOpen && asked.trim() !== "";
  const choose = (entry: IndexEntry | undefined) => {
    if (entry === undefined) return;
    setOpen(false);
    onChoose(entry);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      const step = event.key === "ArrowDown" ? 1 : -1;
      setOpen(true);
      if (isShown && found.length > 0) setAt((at + step + found.length) % found.length);
    } else if (event.key === "Enter") choose(found[at] ?? found[0]);
    else if (event.key === "Escape" && isShown) setOpen(false);
    else return;
    event.preventDefault();
  };
  return (
    <div className="relative min-w-52 flex-1">
      <label htmlFor={id} className="label-small">
        Find on the sheets
      </label>
      <input
        ref={field}
        id={id}
        type="search"
        role="combobox"
        autoComplete="off"
        aria-expanded={isShown}
        aria-controls={`${id}-found`}
        aria-autocomplete="list"
        aria-activedescendant={isShown && found.length > 0 ? `${id}-${at}` : undefined}
        placeholder="Designator, name, colour, terminal, place"
        value={asked}
        onChange={(event) => {
          setAsked(event.target.value);
          setAt(0);
          setOpen(true);
        }}
        onFocus={() => setOpen(true)}
        onBlur={() => setOpen(false)}
        onKeyDown={onKeyDown}
        className="block min-h-11 w-full rounded-sheet border border-edge bg-paper px-3 placeholder:text-ink-soft hover:border-ink"
      />
      <div
        id={`${id}-found`}
        role="listbox"
        aria-label="Found on the sheets"
        hidden={!isShown}
        className="absolute inset-x-0 top-full z-30 max-h-96 min-w-80 overflow-y-auto border-2 border-ink bg-paper"
      >
        {found.map((entry, position) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the keys act on the field, which keeps the focus
          <div
            key={`${entry.kind} ${entry.id}`}
            id={`${id}-${position}`}
            role="option"
            tabIndex={-1}
            aria-selected={position === at}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => choose(entry)}
            className="min-h-11 cursor-pointer border-l-4 border-transparent px-2 py-1 leading-tight hover:bg-panel aria-selected:border-copper-fill aria-selected:bg-panel"
          >
            <code className="font-semibold">{entry.id}</code> {entry.title}
            <span className="block text-sm text-ink-soft">
              {[entry.place, entry.systems.map((system) => titles.get(system) ?? system).join(", ")]
                .filter(Boolean)
                .join(" · ")}
            </span>
          </div>
        ))}
      </div>
      <p role="status" className={isShown && found.length === 0 ? "text-sm" : "sr-only"}>
        {isShown
          ? found.length === 0
            ? "Nothing on the sheets answers to this."
            : `${found.length} found`
          : ""}
      </p>
    </div>
  );
}
