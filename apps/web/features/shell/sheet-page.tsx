import type { ReactNode } from "react";
import { TitleBlock, type TitleBlockEntry } from "./title-block";

export interface SheetPageProps {
  readonly title: ReactNode;
  /** One or two sentences under the heading. */
  readonly lead?: ReactNode;
  /** The way back up, above the heading: usually one link. */
  readonly above?: ReactNode;
  /** Buttons and links at the right of the heading. */
  readonly actions?: ReactNode;
  /** Full width for diagrams and wide tables; otherwise text keeps a readable width. */
  readonly wide?: boolean;
  readonly entries: readonly TitleBlockEntry[];
  readonly children: ReactNode;
}

/** The inside of every signed-in page: heading, content, title block at the lower right. */
export function SheetPage({ title, lead, above, actions, wide = false, entries, children }: SheetPageProps) {
  return (
    <>
      <div className={`w-full flex-1 px-4 py-6 sm:px-8 sm:py-8 ${wide ? "" : "max-w-7xl"}`}>
        {above !== undefined && <div className="no-print mb-2">{above}</div>}
        <div className="mb-6 flex flex-wrap items-end justify-between gap-x-8 gap-y-4">
          <div className="max-w-prose">
            <h1>{title}</h1>
            {lead !== undefined && <p className="mt-1 text-ink-soft">{lead}</p>}
          </div>
          {actions !== undefined && <div className="no-print flex flex-wrap gap-3">{actions}</div>}
        </div>
        {children}
      </div>
      <TitleBlock entries={entries} />
    </>
  );
}
