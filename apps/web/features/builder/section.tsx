import type { ReactNode } from "react";

export interface SectionProps {
  readonly id: string;
  readonly title: string;
  readonly lead?: ReactNode;
  readonly children: ReactNode;
}

export function Section({ id, title, lead, children }: SectionProps) {
  return (
    <section aria-labelledby={id} className="space-y-4 border-t-2 border-ink pt-4">
      <div className="max-w-prose">
        <h2 id={id}>{title}</h2>
        {lead !== undefined && <p className="text-ink-soft">{lead}</p>}
      </div>
      {children}
    </section>
  );
}
