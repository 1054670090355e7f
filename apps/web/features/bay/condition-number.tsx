"use client";

import type { LearnerView } from "@probeworthy/evaluation";
import { type FormEvent, useId, useState } from "react";

type Condition = LearnerView["conditions"][number];
export type NumberCondition = Extract<Condition, { kind: "number" }>;

export interface ConditionNumberProps {
  readonly condition: NumberCondition;
  readonly onSet: (value: number) => void;
}

/**
 * A slider with a figure beside it. Letting go of the slider, or Enter in either, sets the value; moving alone does not,
 * because setting it is an action at the car.
 */
export function ConditionNumber({ condition, onSet }: ConditionNumberProps) {
  const id = useId();
  const [draft, setDraft] = useState(String(condition.value));
  const [seen, setSeen] = useState(condition.value);
  if (seen !== condition.value) {
    setSeen(condition.value);
    setDraft(String(condition.value));
  }
  const figure = Number(draft.replace(",", "."));
  const valid = draft.trim() !== "" && figure >= condition.minimum && figure <= condition.maximum;
  const label = `${condition.title}${condition.unit === "" ? "" : `, ${condition.unit}`}`;

  const set = (value: number) => {
    if (value !== condition.value) onSet(value);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (valid) set(figure);
  };

  if (!condition.adjustable) {
    return (
      // As high as the control it stands for, so that turning the key moves nothing.
      <div className="min-h-[4.25rem]">
        <p className="flex flex-wrap items-baseline justify-between gap-x-3">
          <span className="label-small">{condition.title}</span>
          <span className="font-mono">
            {condition.value} {condition.unit}
          </span>
        </p>
        {condition.reason !== undefined && <p className="text-sm text-ink-soft">{condition.reason}</p>}
      </div>
    );
  }
  return (
    <form onSubmit={submit} className="min-h-[4.25rem]">
      <label htmlFor={id} className="label-small">
        {label}
      </label>
      <div className="flex items-center gap-2">
        <input
          type="range"
          aria-label={`${label}, slider`}
          min={condition.minimum}
          max={condition.maximum}
          step={condition.step}
          value={valid ? figure : condition.value}
          onChange={(event) => setDraft(event.target.value)}
          onPointerUp={(event) => set(Number(event.currentTarget.value))}
          onKeyDown={(event) => {
            if (event.key === "Enter") set(Number(event.currentTarget.value));
          }}
          className="h-11 min-w-0 flex-1 cursor-pointer"
        />
        <input
          id={id}
          inputMode="decimal"
          value={draft}
          onChange={(event) => setDraft(event.target.value)}
          aria-invalid={!valid || undefined}
          aria-describedby={`${id}-range`}
          className="min-h-11 w-18 rounded-sheet border border-edge bg-paper px-2 text-right font-mono aria-invalid:border-2 aria-invalid:border-ink"
        />
        <button
          type="submit"
          disabled={!valid || figure === condition.value}
          aria-label={`Set ${condition.title.toLowerCase()}`}
          className="min-h-11 min-w-11 cursor-pointer rounded-sheet border border-edge px-2 hover:border-ink disabled:cursor-default disabled:opacity-60"
        >
          Set
        </button>
      </div>
      <p id={`${id}-range`} className={valid ? "sr-only" : "text-sm font-semibold"}>
        From {condition.minimum} to {condition.maximum} {condition.unit}
      </p>
    </form>
  );
}
