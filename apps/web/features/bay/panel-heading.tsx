import type { ReactNode } from "react";

/** Heading of a panel beside the drawing: a line of the title block. */
export function PanelHeading({ id, children }: { readonly id: string; readonly children: ReactNode }) {
  return (
    <h2 id={id} className="mb-2 border-b border-ink pb-0.5 text-base">
      {children}
    </h2>
  );
}
