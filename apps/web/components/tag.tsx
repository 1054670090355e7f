import type { ReactNode } from "react";

const marks = {
  open: <circle cx="6" cy="6" r="4" fill="none" stroke="currentColor" strokeWidth="1.6" />,
  active: (
    <>
      <circle cx="6" cy="6" r="4" fill="none" stroke="currentColor" strokeWidth="1.6" />
      <path d="M6 2a4 4 0 0 1 0 8Z" fill="currentColor" />
    </>
  ),
  done: <path d="M2 6.5 5 9.5 10 3" fill="none" stroke="currentColor" strokeWidth="2" />,
  waiting: (
    <path d="M3 2h6L3 10h6Z" fill="none" stroke="currentColor" strokeWidth="1.5" strokeLinejoin="round" />
  ),
  closed: <path d="M2.5 2.5h7v7h-7Z" fill="currentColor" />,
  attention: (
    <path d="M6 1.5 11 10.5H1Z" fill="none" stroke="currentColor" strokeWidth="1.6" strokeLinejoin="round" />
  ),
} as const;

export type TagState = keyof typeof marks;

/** A state as a word with a shape of its own, so that it reads in print and without colour. */
export function Tag({ state, children }: { readonly state: TagState; readonly children: ReactNode }) {
  return (
    <span className="inline-flex items-center gap-1.5 rounded-sheet border border-edge px-2 py-0.5 text-sm whitespace-nowrap">
      <svg viewBox="0 0 12 12" className="size-3 shrink-0" aria-hidden="true" focusable="false">
        {marks[state]}
      </svg>
      {children}
    </span>
  );
}
