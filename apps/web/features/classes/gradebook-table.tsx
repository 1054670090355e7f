"use client";

import {
  createColumnHelper,
  createSortedRowModel,
  rowSortingFeature,
  sortFn_basic,
  tableFeatures,
  useTable,
} from "@tanstack/react-table";
import clsx from "clsx";
import Link from "next/link";
import { useMemo } from "react";
import { LocalTime } from "@/features/time/local-time";
import type { GradebookCellView, GradebookView } from "./class-view";

const features = tableFeatures({
  rowSortingFeature,
  sortedRowModel: createSortedRowModel(),
  sortFns: { basic: sortFn_basic },
});

type Row = GradebookView["rows"][number];
const helper = createColumnHelper<typeof features, Row>();
const byName = (one: string, other: string) => one.localeCompare(other, "en");

const sortWords = { asc: "ascending", desc: "descending" } as const;

/** Learners down, assignments across. The name stays in view when a wide table is scrolled sideways. */
export function GradebookTable({ book }: { readonly book: GradebookView }) {
  const columns = useMemo(() => columnsOf(book), [book]);
  const table = useTable({
    features,
    columns,
    data: book.rows as Row[],
    initialState: { sorting: [{ id: "name", desc: false }] },
    enableSortingRemoval: false,
  });
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
    <section aria-label="Gradebook" tabIndex={0} className="relative overflow-x-auto">
      <table className="w-full border-collapse text-left">
        <caption className="sr-only">Gradebook: a row for each learner, a column for each assignment</caption>
        <thead className="border-b-2 border-ink align-bottom">
          {table.getHeaderGroups().map((group) => (
            <tr key={group.id}>
              {group.headers.map((header) => {
                const sorted = header.column.getIsSorted();
                return (
                  <th
                    key={header.id}
                    scope="col"
                    aria-sort={sorted === false ? "none" : sortWords[sorted]}
                    className={clsx(
                      "px-3 py-2 font-semibold",
                      header.id === "name" && "sticky left-0 z-10 bg-paper pl-0",
                    )}
                  >
                    <button
                      type="button"
                      onClick={header.column.getToggleSortingHandler()}
                      className="flex min-h-11 cursor-pointer items-end gap-1.5 text-left hover:underline"
                    >
                      <table.FlexRender header={header} />
                      <span aria-hidden="true" className="w-3 font-mono">
                        {sorted === "asc" ? "↑" : sorted === "desc" ? "↓" : ""}
                      </span>
                    </button>
                  </th>
                );
              })}
            </tr>
          ))}
        </thead>
        <tbody>
          {table.getRowModel().rows.map((row) => (
            <tr key={row.id} className="border-b border-hairline">
              {row.getAllCells().map((cell) =>
                cell.column.id === "name" ? (
                  <th
                    key={cell.id}
                    scope="row"
                    className="sticky left-0 z-10 bg-paper py-2 pr-3 font-semibold"
                  >
                    <table.FlexRender cell={cell} />
                  </th>
                ) : (
                  <td key={cell.id} className="px-3 py-2">
                    <table.FlexRender cell={cell} />
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr className="border-t-2 border-ink">
            <th scope="row" className="sticky left-0 z-10 bg-paper py-2 pr-3 text-left font-semibold">
              Mean
            </th>
            {book.assignments.map(({ id, mean }) => (
              <td key={id} className="px-3 py-2 font-mono">
                {mean === null ? "" : mean.toFixed(1)}
              </td>
            ))}
            <td className="px-3 py-2 font-mono font-semibold">
              {book.totalMean === null ? "" : book.totalMean.toFixed(1)}
            </td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

function columnsOf(book: GradebookView) {
  return helper.columns([
    helper.accessor("name", {
      id: "name",
      header: "Learner",
      cell: ({ row }) => <LearnerName row={row.original} />,
      sortFn: (one, other) => byName(one.original.name, other.original.name),
    }),
    ...book.assignments.map((assignment, column) =>
      helper.accessor((row) => row.cells[column]?.percent ?? undefined, {
        id: assignment.id,
        header: () => <AssignmentHeading assignment={assignment} />,
        cell: ({ row }) => {
          const cell = row.original.cells[column];
          return cell === undefined ? null : (
            <GradeCell cell={cell} learner={row.original.name} assignment={assignment.title} />
          );
        },
        sortUndefined: "last",
        sortFn: "basic",
      }),
    ),
    helper.accessor((row) => row.total ?? undefined, {
      id: "total",
      header: "Total",
      cell: ({ row }) =>
        row.original.total === null ? (
          <span className="text-ink-soft">–</span>
        ) : (
          <span className="font-mono font-semibold">{row.original.total.toFixed(1)}</span>
        ),
      sortUndefined: "last",
      sortFn: "basic",
    }),
  ]);
}

function LearnerName({ row }: { readonly row: Row }) {
  return (
    <span className="block max-w-64 min-w-32">
      <span className="block break-words">{row.name}</span>
      <span className="block truncate text-sm font-normal text-ink-soft" title={row.email}>
        {row.email}
      </span>
    </span>
  );
}

function AssignmentHeading({ assignment }: { readonly assignment: GradebookView["assignments"][number] }) {
  return (
    <span className="block max-w-56 min-w-32">
      <span className="line-clamp-3 break-words" title={assignment.title}>
        {assignment.title}
      </span>
      <span className="block text-sm font-normal text-ink-soft">
        pass {assignment.passMark}
        {assignment.closesAt !== null && (
          <>
            , until <LocalTime at={assignment.closesAt} />
          </>
        )}
      </span>
    </span>
  );
}

interface GradeCellProps {
  readonly cell: GradebookCellView;
  readonly learner: string;
  readonly assignment: string;
}

/** The state in words; a figure only where something is graded. */
function GradeCell({ cell, learner, assignment }: GradeCellProps) {
  const words = wordsOf(cell);
  const content = (
    <>
      {cell.percent !== null && (
        <span className="font-mono text-base font-semibold">{cell.percent.toFixed(1)}</span>
      )}{" "}
      <span className={cell.percent === null ? "" : "text-sm"}>{words}</span>
    </>
  );
  return (
    <span className="block whitespace-nowrap">
      {cell.attemptId === null ? (
        <span className="text-ink-soft">{words}</span>
      ) : (
        <Link
          href={`/attempts/${cell.attemptId}/review`}
          aria-label={`${cell.percent === null ? "" : `${cell.percent.toFixed(1)} `}${words}: review ${learner}, ${assignment}`}
          className="link inline-block min-h-6"
        >
          {content}
        </Link>
      )}
      {(cell.attempts > 1 || cell.overridden || cell.unread) && (
        <span className="block text-sm text-ink-soft">
          {[
            cell.attempts > 1 ? `${cell.attempts} attempts` : "",
            cell.overridden ? "changed" : "",
            cell.unread ? "to read" : "",
          ]
            .filter((part) => part !== "")
            .join(", ")}
        </span>
      )}
    </span>
  );
}

function wordsOf({ state, passed }: GradebookCellView): string {
  switch (state) {
    case "not_started":
      return "not started";
    case "open":
      return "open";
    case "awaiting":
      return "handed in";
    case "missing":
      return "not handed in";
    case "graded":
      return passed === true ? "passed" : "not passed";
  }
}
