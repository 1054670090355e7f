import type { ReactNode } from "react";

export interface TitleBlockEntry {
  readonly label: string;
  readonly value: ReactNode;
}

/**
 * The block at the lower right of a drawing: what this sheet is. Pages usually fill it through <SheetPage entries>.
 * Two to eight short entries; the first is the widest.
 */
export function TitleBlock({ entries }: { readonly entries: readonly TitleBlockEntry[] }) {
  return (
    <dl
      aria-label="Title block"
      className="keep-together ml-auto grid w-full max-w-3xl grid-cols-2 border-t-2 border-ink sm:flex sm:w-auto sm:border-l-2"
    >
      {entries.map((entry) => (
        <div
          key={entry.label}
          className="-mb-px min-w-24 flex-auto border-r border-b border-hairline px-3 py-1.5 last:border-r-0 sm:max-w-72"
        >
          <dt className="label-small">{entry.label}</dt>
          <dd className="truncate font-mono text-sm">{entry.value}</dd>
        </div>
      ))}
    </dl>
  );
}
