import type { ReactNode } from "react";

export interface EmptyStateProps {
  /** What is not here yet. */
  readonly title: string;
  /** Why, and what fills it. */
  readonly children?: ReactNode;
  readonly action?: ReactNode;
}

/** An empty place on the sheet, outlined the way a part is drawn that is not fitted. */
export function EmptyState({ title, children, action }: EmptyStateProps) {
  return (
    <div className="border border-dashed border-edge px-6 py-10 text-center">
      <p className="text-lg font-semibold">{title}</p>
      {children !== undefined && <div className="mx-auto mt-1 max-w-prose text-ink-soft">{children}</div>}
      {action !== undefined && <div className="mt-4">{action}</div>}
    </div>
  );
}
