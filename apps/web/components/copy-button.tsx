"use client";

import { useState } from "react";
import { Button } from "./button";

export interface CopyButtonProps {
  readonly text: string;
  readonly label: string;
  /** The element whose text is selected when the browser does not let a page write to the clipboard. */
  readonly sourceId?: string;
}

/** Puts a text on the clipboard and says so; selects it instead where the browser refuses. */
export function CopyButton({ text, label, sourceId }: CopyButtonProps) {
  const [said, setSaid] = useState("");
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid("Copied");
    } catch {
      // No clipboard outside a secure context (a classroom server over plain http): offer the next best thing.
      const source = sourceId === undefined ? null : document.getElementById(sourceId);
      if (source !== null) window.getSelection()?.selectAllChildren(source);
      setSaid(source === null ? "Copy it by hand" : "Selected: press Ctrl+C");
    }
  };
  return (
    <span className="inline-flex flex-wrap items-center gap-3">
      <Button onClick={() => void copy()}>{label}</Button>
      <span role="status">{said}</span>
    </span>
  );
}
