import Link from "next/link";
import { buttonClass } from "@/components/button-class";
import { EmptyState } from "@/components/empty-state";
import type { GradebookView } from "./class-view";
import { GradebookTable } from "./gradebook-table";

const policyWords = {
  best: "the best attempt",
  latest: "the latest attempt",
  first: "the first attempt",
  average: "the average of all attempts",
} as const;

export interface GradebookTabProps {
  readonly classId: string;
  readonly book: GradebookView;
}

export function GradebookTab({ classId, book }: GradebookTabProps) {
  if (book.rows.length === 0 || book.assignments.length === 0) {
    return (
      <EmptyState title="The gradebook is empty">
        {book.rows.length === 0
          ? "Enrol learners on the tab beside this one. Each gets a row here."
          : "Hand out work with the button above. Each assignment gets a column here."}
      </EmptyState>
    );
  }
  const file = `/api/classes/${classId}/gradebook?policy=${book.policy}`;
  return (
    <div className="space-y-4">
      <div className="flex flex-wrap items-center justify-between gap-x-8 gap-y-3">
        <p>
          Of several attempts <strong>{policyWords[book.policy]}</strong> counts. Count{" "}
          {(Object.keys(policyWords) as (keyof typeof policyWords)[])
            .filter((policy) => policy !== book.policy)
            .map((policy, index, all) => (
              <span key={policy}>
                <Link
                  href={`/classes/${classId}?policy=${policy}`}
                  className="link inline-block min-h-6"
                  scroll={false}
                >
                  {policyWords[policy]}
                </Link>
                {index < all.length - 1 ? ", " : ""}
              </span>
            ))}{" "}
          instead.
        </p>
        <p className="no-print flex flex-wrap gap-3">
          <a href={file} download className={buttonClass("quiet")}>
            Download CSV
          </a>
          <a href={`${file}&separator=%3B`} download className={buttonClass("quiet")}>
            CSV with semicolons
          </a>
        </p>
      </div>
      <GradebookTable book={book} />
      <p className="max-w-prose text-sm text-ink-soft">
        The total is the mean of what is graded so far; work that closed without a report counts as 0.
        “Changed” marks a score set by a person; “to read” one that the rules worked out and whose report
        nobody has read yet.
      </p>
    </div>
  );
}
