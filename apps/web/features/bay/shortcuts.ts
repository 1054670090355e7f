"use client";

import { useEffect, useRef, useState } from "react";

export interface Shortcut {
  readonly key: string;
  readonly does: string;
}

export const shortcuts: readonly Shortcut[] = [
  { key: "R", does: "Take the red lead in hand" },
  { key: "B", does: "Take the black lead in hand" },
  { key: "Enter", does: "Place the lead in hand on the focused point" },
  { key: "M", does: "Take a reading" },
  { key: "1 to 4", does: "Set the meter: volts, ohms, continuity, amps" },
  { key: "/", does: "Search test points" },
  { key: "D", does: "Show the wiring diagram" },
  { key: "L", does: "Show the log" },
  { key: "?", does: "Show this list" },
];

const offKey = "probeworthy.shortcuts.off";

/** Whether single keys act; people who use speech input switch them off (WCAG 2.1.4). Kept in this browser. */
export function useShortcutSetting(): [boolean, (on: boolean) => void] {
  const [on, setOn] = useState(true);
  useEffect(() => {
    try {
      setOn(window.localStorage.getItem(offKey) === null);
    } catch {
      // Storage switched off: the default holds.
    }
  }, []);
  const change = (next: boolean) => {
    setOn(next);
    try {
      if (next) window.localStorage.removeItem(offKey);
      else window.localStorage.setItem(offKey, "1");
    } catch {
      // As above: the setting then lives as long as the page.
    }
  };
  return [on, change];
}

/** Runs `actions[key]` for a single key pressed outside text fields and dialogs. Keys are given in lower case. */
export function useShortcuts(enabled: boolean, actions: Readonly<Record<string, () => void>>): void {
  const latest = useRef(actions);
  useEffect(() => {
    latest.current = actions;
  });
  useEffect(() => {
    if (!enabled) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.repeat) return;
      const target = event.target instanceof HTMLElement ? event.target : document.body;
      if (target.closest("input:not([type=range]), textarea, select, [contenteditable=true], [role=dialog]"))
        return;
      const action = latest.current[event.key.toLowerCase()];
      if (action === undefined) return;
      event.preventDefault();
      action();
    };
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, [enabled]);
}
