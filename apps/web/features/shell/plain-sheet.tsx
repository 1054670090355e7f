import type { ReactNode } from "react";
import { Mark } from "./mark";
import { SheetFrame } from "./sheet-frame";
import { SkipLink } from "./skip-link";
import { TitleBlock, type TitleBlockEntry } from "./title-block";

export interface PlainSheetProps {
  readonly children: ReactNode;
  readonly entries: readonly TitleBlockEntry[];
}

/** The sheet for people who are not signed in: sign-in, invitations, errors. */
export function PlainSheet({ children, entries }: PlainSheetProps) {
  return (
    <>
      <SkipLink />
      <SheetFrame>
        <header className="flex min-h-12 items-center gap-2 border-b border-ink px-4 py-2 text-lg font-semibold sm:px-8">
          <Mark />
          Probeworthy
        </header>
        <main id="content" tabIndex={-1} className="flex flex-1 flex-col">
          <div className="flex-1 px-4 py-8 sm:px-8 sm:py-12">{children}</div>
          <TitleBlock entries={entries} />
        </main>
      </SheetFrame>
    </>
  );
}
