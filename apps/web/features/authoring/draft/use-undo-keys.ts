"use client";

import { useEffect } from "react";
import type { DraftActions } from "./draft-context";

/** Ctrl + Z takes a step back, Ctrl + Shift + Z (or Ctrl + Y) forward, wherever the focus is in the workspace. */
export function useUndoKeys({ undo, redo }: Pick<DraftActions, "undo" | "redo">) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
      const key = event.key.toLowerCase();
      const isDialog = event.target instanceof Element && event.target.closest("[role=dialog]") !== null;
      if (isDialog || (key !== "z" && key !== "y")) return;
      event.preventDefault();
      if (key === "y" || event.shiftKey) redo();
      else undo();
    };
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, [undo, redo]);
}
