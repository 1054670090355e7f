"use client";

import { type KeyboardEvent, type RefObject, useCallback, useEffect, useRef } from "react";

type Place = readonly [row: number, column: number];

/**
 * Keys of a spreadsheet in a table of inputs: Enter goes down and Shift + Enter up, Alt + arrows go anywhere, up and down
 * alone where no list of suggestions needs them. Enter in the last row adds one when the table can.
 */
export function useCellKeys(
  body: RefObject<HTMLTableSectionElement | null>,
  addRow: (() => void) | undefined,
) {
  const waiting = useRef<Place>(undefined);
  const focus = useCallback(
    ([row, column]: Place): boolean => {
      const cell = body.current?.querySelector(`[data-cell="${row} ${column}"]`);
      const control = cell?.querySelector<HTMLElement>("input, select, textarea");
      control?.focus();
      if (control instanceof HTMLInputElement) control.select();
      return control !== undefined && control !== null;
    },
    [body],
  );
  // A row that was just added is there after the next drawing.
  useEffect(() => {
    if (waiting.current !== undefined && focus(waiting.current)) waiting.current = undefined;
  });
  return useCallback(
    (event: KeyboardEvent) => {
      const target = event.target as HTMLElement;
      const here = target.closest("[data-cell]")?.getAttribute("data-cell")?.split(" ").map(Number);
      const [row, column] = here ?? [];
      if (row === undefined || column === undefined || event.ctrlKey || event.metaKey) return;
      const step = stepOf(event, target);
      if (step === undefined) return;
      event.preventDefault();
      const rows = [...(body.current?.querySelectorAll("[data-cell]") ?? [])].map((cell) =>
        Number(cell.getAttribute("data-cell")?.split(" ")[0]),
      );
      const shown = [...new Set(rows)];
      const next = shown[shown.indexOf(row) + step[0]];
      if (next !== undefined) focus([next, column + step[1]]);
      else if (event.key === "Enter" && step[0] === 1 && addRow !== undefined) {
        waiting.current = [row + 1, 0];
        addRow();
      }
    },
    [addRow, body, focus],
  );
}

const arrows: Readonly<Record<string, Place>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

function stepOf(event: KeyboardEvent, target: HTMLElement): Place | undefined {
  if (target instanceof HTMLButtonElement) return undefined;
  if (event.key === "Enter") return event.shiftKey ? [-1, 0] : [1, 0];
  const step = arrows[event.key];
  if (step === undefined || event.altKey) return step;
  const isPlain =
    target instanceof HTMLInputElement && !target.hasAttribute("list") && target.type !== "checkbox";
  return isPlain && step[0] !== 0 ? step : undefined;
}
