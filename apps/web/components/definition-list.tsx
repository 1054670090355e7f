import { Fragment, type ReactNode } from "react";

export interface Definition {
  readonly term: ReactNode;
  readonly value: ReactNode;
  /** When the term is not plain text. */
  readonly key?: string;
}

export function DefinitionList({ items }: { readonly items: readonly Definition[] }) {
  return (
    <dl className="grid grid-cols-[minmax(7rem,max-content)_1fr] gap-x-6 gap-y-2">
      {items.map((item, index) => (
        <Fragment key={item.key ?? (typeof item.term === "string" ? item.term : index)}>
          <dt className="text-ink-soft">{item.term}</dt>
          <dd className="min-w-0 break-words">{item.value}</dd>
        </Fragment>
      ))}
    </dl>
  );
}
