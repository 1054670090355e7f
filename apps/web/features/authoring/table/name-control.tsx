"use client";

import clsx from "clsx";
import { useState } from "react";
import { useDraftActions } from "../draft/draft-context";
import { setAt } from "../draft/path";
import { renameEverywhere } from "../draft/rename";
import { recordsOf } from "../fields/new-record";
import { type SectionName, sectionSpecs } from "../fields/section-specs";
import { cellClass } from "../fields/text-control";

interface NameControlProps {
  readonly section: SectionName;
  readonly index: number;
  readonly value: string;
  readonly label: string;
  readonly invalid: boolean;
}

/**
 * The name of a row. It is taken when the field is left, not letter by letter: then everything that speaks of the row is
 * rewritten, in one step. A name that another row has is written without touching what speaks of either.
 */
export function NameControl({ section, index, value, label, invalid }: NameControlProps) {
  const { edit } = useDraftActions();
  const [typed, setTyped] = useState<string>();
  const { nameKey, item } = sectionSpecs[section];
  const take = () => {
    const next = typed?.trim();
    setTyped(undefined);
    if (next === undefined || next === value) return;
    edit((draft) => {
      const taken = recordsOf(draft, section).some((record) => record[nameKey] === next);
      const named = setAt(draft, [section, index, nameKey], next);
      return taken || next === "" ? named : renameEverywhere(named, section, value, next);
    }, `${item} ${value} renamed`);
  };
  return (
    <input
      value={typed ?? value}
      aria-label={label}
      aria-invalid={invalid || undefined}
      autoComplete="off"
      size={Math.max(6, value.length)}
      spellCheck={false}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === "Escape") setTyped(undefined);
      }}
      className={clsx(cellClass, "font-mono font-semibold")}
    />
  );
}
