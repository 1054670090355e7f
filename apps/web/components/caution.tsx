import type { ReactNode } from "react";

export interface CautionProps {
  readonly title?: string;
  readonly children: ReactNode;
  readonly className?: string;
}

/** A hazard of the real work, framed in ink on screen and on paper. Not for errors of the program: see ProblemNotice. */
export function Caution({ title = "Caution", children, className = "" }: CautionProps) {
  return (
    <aside aria-label={title} className={`keep-together flex border-2 border-ink ${className}`}>
      <div className="flex shrink-0 items-start border-r-2 border-ink p-3">
        <svg viewBox="0 0 40 36" className="h-9 w-10" aria-hidden="true" focusable="false">
          <path d="M20 3 37 33H3Z" fill="none" stroke="currentColor" strokeWidth="3" strokeLinejoin="round" />
          <path d="M18.2 13h3.6l-.7 10.5h-2.2Z" fill="currentColor" />
          <circle cx="20" cy="27.3" r="2" fill="currentColor" />
        </svg>
      </div>
      <div className="min-w-0 p-3">
        <p className="font-semibold">{title}</p>
        <div className="space-y-1">{children}</div>
      </div>
    </aside>
  );
}
