import type { ReactNode } from "react";

// ISO 5457: letters down the side without I and O, numbers along the edge, one field each 50 mm.
const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ".split("");
const numbers = Array.from({ length: 24 }, (_, index) => index + 1);

/** The drawing sheet every page lies on. The zone marks are decoration and hidden on small screens and in print. */
export function SheetFrame({ children }: { readonly children: ReactNode }) {
  return (
    <div className="grid min-h-dvh grid-cols-1 p-2 lg:grid-cols-[1.5rem_1fr] lg:grid-rows-[1.5rem_1fr] lg:p-3 print:block print:p-0">
      <div
        aria-hidden="true"
        className="no-print col-start-2 row-start-1 hidden overflow-hidden border border-b-0 border-edge text-xs text-ink-soft select-none lg:flex"
      >
        {numbers.map((number) => (
          <span
            key={number}
            className="flex h-full w-[50mm] shrink-0 items-center justify-center border-r border-edge"
          >
            {number}
          </span>
        ))}
      </div>
      <div
        aria-hidden="true"
        className="no-print relative col-start-1 row-start-2 hidden overflow-hidden border border-r-0 border-edge text-xs text-ink-soft select-none lg:block"
      >
        <div className="absolute inset-x-0 top-0">
          {letters.map((letter) => (
            <span
              key={letter}
              className="flex h-[50mm] w-full items-center justify-center border-b border-edge"
            >
              {letter}
            </span>
          ))}
        </div>
      </div>
      <div className="relative flex min-w-0 flex-col border-2 border-ink lg:col-start-2 lg:row-start-2 print:border-0">
        {children}
      </div>
    </div>
  );
}
