"use client";

import {
  type ClipboardEvent,
  Fragment,
  type KeyboardEvent,
  type ReactNode,
  useCallback,
  useMemo,
  useRef,
  useState,
} from "react";
import { EmptyState } from "@/components/empty-state";
import { TextInput } from "@/components/inputs";
import { useDraft, useDraftActions } from "../draft/draft-context";
import { type AuthoringMessage, useMessages } from "../draft/messages";
import { insertAt, parsePath, removeAt } from "../draft/path";
import type { FieldSpec } from "../fields/field-spec";
import { type DraftRecord, duplicate, newRecord, recordsOf } from "../fields/new-record";
import { type SectionName, sectionSpecs } from "../fields/section-specs";
import { parseCells, pasteInto } from "./paste";
import { RecordRow, type RowActions } from "./record-row";
import { useCellKeys } from "./use-cell-keys";

interface RecordTableProps {
  readonly section: SectionName;
  readonly caption: string;
  readonly open: number | undefined;
  readonly onOpen: (index: number | undefined) => void;
  readonly columns?: readonly FieldSpec[];
  /** Only rows of this kind. */
  readonly only?: string;
  readonly showKind?: boolean;
  /** What adds a row; by default one button. */
  readonly adder: ReactNode;
}

const none: readonly AuthoringMessage[] = [];

/** A list of the document as a table that is edited in place, like a spreadsheet. */
export function RecordTable(props: RecordTableProps) {
  const { section, caption, open, onOpen, only, showKind = false, adder } = props;
  const spec = sectionSpecs[section];
  const columns = props.columns ?? spec.columns;
  const draft = useDraft();
  const { edit } = useDraftActions();
  const [query, setQuery] = useState("");
  const body = useRef<HTMLTableSectionElement>(null);
  const records = recordsOf(draft, section);
  const messages = useRowMessages(section);
  const addRow = useCallback(
    () => edit((before) => insertAt(before, [section], [newRecord(before, section)]), `${spec.item} added`),
    [edit, section, spec.item],
  );
  const canAdd = only === undefined && section !== "components" && section !== "conditions";
  const keys = useCellKeys(body, canAdd ? addRow : undefined);
  const openRef = useRef(open);
  openRef.current = open;
  const actions = useMemo<RowActions>(
    () => ({
      toggle: (index) => onOpen(openRef.current === index ? undefined : index),
      duplicate: (index) =>
        edit((before) => {
          const record = recordsOf(before, section)[index];
          return record === undefined
            ? before
            : insertAt(before, [section], [duplicate(before, section, record)], index + 1);
        }, `${spec.item} copied`),
      remove: (index) => {
        onOpen(undefined);
        edit((before) => removeAt(before, [section], index), `${spec.item} deleted`);
      },
    }),
    [edit, onOpen, section, spec.item],
  );
  const paste = (event: ClipboardEvent) => {
    const cell = (event.target as Element).closest("[data-cell]")?.getAttribute("data-cell");
    const text = event.clipboardData.getData("text/plain");
    if (typeof cell !== "string" || !/[\t\n]/.test(text.trim())) return;
    event.preventDefault();
    const [row = 0, column = 0] = cell.split(" ").map(Number);
    const cells = parseCells(text);
    edit(
      (before) => pasteInto(before, section, columns, { row, column }, cells),
      `${cells.length} ${cells.length === 1 ? "row" : "rows"} pasted`,
    );
  };
  const shown = records
    .map((record, index) => ({ record, index }))
    .filter(({ record }) => (only === undefined || record.kind === only) && matches(record, query));
  if (records.length === 0 || (only !== undefined && shown.length === 0 && query === ""))
    return (
      <EmptyState title={`No ${spec.title.toLowerCase()} yet`} action={adder}>
        {spec.empty}
      </EmptyState>
    );
  return (
    <div className="space-y-3">
      {records.length > 12 && (
        <TextInput
          type="search"
          aria-label={`Filter ${spec.title.toLowerCase()}`}
          placeholder="Filter"
          className="max-w-64"
          value={query}
          onChange={(event) => setQuery(event.target.value)}
        />
      )}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard */}
      <section aria-label={caption} tabIndex={0} className="relative overflow-x-auto">
        <table className="w-full border-collapse text-left">
          <caption className="sr-only">{caption}</caption>
          <thead className="border-b-2 border-ink align-bottom">
            <tr>
              {columns.map((column, index) => (
                <Fragment key={column.key}>
                  <th scope="col" className="px-2 py-1.5 text-sm font-semibold">
                    {column.label}
                  </th>
                  {showKind && index === 0 && (
                    <th scope="col" className="px-2 py-1.5 text-sm font-semibold">
                      Kind
                    </th>
                  )}
                </Fragment>
              ))}
              <th>
                <span className="sr-only">Actions</span>
              </th>
            </tr>
          </thead>
          <tbody ref={body} onKeyDown={keys as (event: KeyboardEvent) => void} onPaste={paste}>
            {shown.map(({ record, index }) => (
              <RecordRow
                key={index}
                section={section}
                index={index}
                record={record}
                columns={columns}
                messages={messages.get(index) ?? none}
                isOpen={open === index}
                actions={actions}
                showKind={showKind}
              />
            ))}
          </tbody>
        </table>
      </section>
      {adder}
    </div>
  );
}

const matches = (record: DraftRecord, query: string): boolean => {
  const text = Object.values(record)
    .filter((value) => typeof value === "string" || typeof value === "number")
    .join(" ")
    .toLowerCase();
  return query
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
};

/** Messages of a section by the row they are about. */
function useRowMessages(section: SectionName): ReadonlyMap<number, readonly AuthoringMessage[]> {
  const messages = useMessages();
  return useMemo(() => {
    const rows = new Map<number, AuthoringMessage[]>();
    for (const message of messages) {
      const [list, index] = parsePath(message.path);
      if (list !== section || typeof index !== "number") continue;
      rows.set(index, [...(rows.get(index) ?? []), message]);
    }
    return rows;
  }, [messages, section]);
}
