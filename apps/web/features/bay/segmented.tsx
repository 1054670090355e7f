"use client";

import clsx from "clsx";
import { type KeyboardEvent, type ReactNode, useRef } from "react";

export interface SegmentedOption {
  readonly value: string;
  readonly label: ReactNode;
  readonly disabled?: boolean;
}

export interface SegmentedProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly SegmentedOption[];
  readonly onChoose: (value: string) => void;
  readonly labelHidden?: boolean;
}

/**
 * One of a few. Arrow keys only move along; Space or Enter chooses, because every choice here is an action at the car
 * that counts.
 */
export function Segmented({ label, value, options, onChoose, labelHidden = false }: SegmentedProps) {
  const buttons = useRef(new Map<string, HTMLButtonElement>());
  const usable = options.filter((option) => option.disabled !== true);
  const entry = usable.some((option) => option.value === value) ? value : usable[0]?.value;

  const move = (event: KeyboardEvent, from: string) => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const index = usable.findIndex((option) => option.value === from);
    const next = usable[(index + step + usable.length) % usable.length];
    if (next !== undefined) buttons.current.get(next.value)?.focus();
  };

  return (
    <div>
      <p aria-hidden="true" className={labelHidden ? "sr-only" : "label-small pb-1"}>
        {label}
      </p>
      <div role="radiogroup" aria-label={label} className="flex flex-wrap">
        {options.map((option) => (
          // biome-ignore lint/a11y/useSemanticElements: a native radio would act on every arrow key
          <button
            key={option.value}
            ref={(element) => {
              if (element === null) buttons.current.delete(option.value);
              else buttons.current.set(option.value, element);
            }}
            type="button"
            role="radio"
            aria-checked={option.value === value}
            disabled={option.disabled}
            tabIndex={option.value === entry ? 0 : -1}
            onClick={() => option.value !== value && onChoose(option.value)}
            onKeyDown={(event) => move(event, option.value)}
            className={clsx(
              "relative -ml-px min-h-11 flex-1 cursor-pointer border px-3 whitespace-nowrap first:ml-0 first:rounded-l-sheet last:rounded-r-sheet",
              "focus-visible:z-10 disabled:cursor-not-allowed disabled:opacity-60",
              option.value === value
                ? "border-ink bg-ink font-semibold text-paper"
                : "border-edge hover:border-ink hover:bg-panel",
            )}
          >
            {option.label}
          </button>
        ))}
      </div>
    </div>
  );
}
