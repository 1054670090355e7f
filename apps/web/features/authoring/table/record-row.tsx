"use client";

import { Fragment, memo } from "react";
import { Icon } from "@/components/icon";
import { useDraftActions } from "../draft/draft-context";
import { type AuthoringMessage, isInside, sentence } from "../draft/messages";
import { formatPath } from "../draft/path";
import { componentSpecs, isComponentKind } from "../fields/component-specs";
import { looseTerminals } from "../fields/draft-facts";
import { FieldControl, listIdOf } from "../fields/field-control";
import { FieldList } from "../fields/field-list";
import type { FieldSpec } from "../fields/field-spec";
import type { DraftRecord } from "../fields/new-record";
import { conditionKinds, type SectionName, sectionSpecs } from "../fields/section-specs";
import { NameControl } from "./name-control";

export interface RowActions {
  readonly toggle: (index: number) => void;
  readonly duplicate: (index: number) => void;
  readonly remove: (index: number) => void;
}

interface RecordRowProps {
  readonly section: SectionName;
  readonly index: number;
  readonly record: DraftRecord;
  readonly columns: readonly FieldSpec[];
  /** Those about this row and what is in it. */
  readonly messages: readonly AuthoringMessage[];
  readonly isOpen: boolean;
  readonly actions: RowActions;
  /** The kind in words, where rows have kinds. */
  readonly showKind: boolean;
}

/** The fields of the form under a row: those of its kind, then those all rows of the section have. */
export function formFieldsOf(section: SectionName, record: DraftRecord): readonly FieldSpec[] {
  const { fields } = sectionSpecs[section];
  if (section === "components" && isComponentKind(record.kind))
    return [...componentSpecs[record.kind].fields, ...fields];
  if (section === "conditions")
    return record.kind === "number"
      ? conditionKinds.number
      : record.kind === "choice"
        ? conditionKinds.choice
        : [];
  return fields;
}

function kindWords(section: SectionName, record: DraftRecord): string {
  if (section === "conditions") return record.kind === "number" ? "number" : "choice";
  return isComponentKind(record.kind) ? componentSpecs[record.kind].title : String(record.kind ?? "");
}

/** One row of a table, editable in place, with its form under it when it is open. */
export const RecordRow = memo(function RecordRow(props: RecordRowProps) {
  const { section, index, record, columns, messages, isOpen, actions, showKind } = props;
  const { write } = useDraftActions();
  const { nameKey, item } = sectionSpecs[section];
  const name = String(record[nameKey] ?? "");
  const fields = formFieldsOf(section, record);
  const path = [section, index];
  const inForm = messages.length;
  return (
    <>
      <tr className="border-b border-hairline align-top" data-path={formatPath(path)}>
        {columns.map((spec, column) => {
          const own = [...path, spec.key];
          const text = formatPath(own);
          const message = messages.find((one) => isInside(one, text));
          const label = `${spec.label} of ${name}`;
          const cell = (
            <td key={spec.key} data-path={text} data-cell={`${index} ${column}`} className="p-0">
              {spec.key === nameKey ? (
                <NameControl
                  section={section}
                  index={index}
                  value={name}
                  label={`${spec.label}, row ${index + 1}`}
                  invalid={message !== undefined}
                />
              ) : spec.type === "group" || spec.type === "list" ? null : (
                <FieldControl
                  spec={spec}
                  value={record[spec.key]}
                  owner={record}
                  label={label}
                  compact
                  invalid={message !== undefined}
                  onChange={(next) => write(own, next, `${name}, ${spec.label.toLowerCase()}`)}
                />
              )}
              {message !== undefined && (
                <p className="flex items-start gap-1 px-2 pb-1 text-sm font-semibold">
                  <Icon name="warning" className="mt-0.5 size-4" />
                  {sentence(message.message)}
                </p>
              )}
            </td>
          );
          if (!showKind || column > 0) return cell;
          return (
            <Fragment key={spec.key}>
              {cell}
              <td className="px-2 py-1.5 whitespace-nowrap text-ink-soft">{kindWords(section, record)}</td>
            </Fragment>
          );
        })}
        <td className="px-2 whitespace-nowrap">
          <span className="flex gap-3">
            {fields.length > 0 && (
              <button
                type="button"
                aria-expanded={isOpen}
                aria-label={`${isOpen ? "Close form" : "Form"} of ${name}${inForm > 0 ? `, ${inForm} messages` : ""}`}
                onClick={() => actions.toggle(index)}
                className="link min-h-9 cursor-pointer"
              >
                {isOpen ? "Close" : "Form"}
                {inForm > 0 && !isOpen && <Icon name="warning" className="ml-1 inline size-4" />}
              </button>
            )}
            <button
              type="button"
              aria-label={`Copy ${item} ${name}`}
              onClick={() => actions.duplicate(index)}
              className="link min-h-9 cursor-pointer"
            >
              Copy
            </button>
            <button
              type="button"
              aria-label={`Delete ${item} ${name}`}
              onClick={() => actions.remove(index)}
              className="link min-h-9 cursor-pointer"
            >
              Delete
            </button>
          </span>
        </td>
      </tr>
      {isOpen && (
        <tr className="border-b border-ink">
          <td
            colSpan={columns.length + (showKind ? 2 : 1)}
            className="border-l-4 border-l-copper-fill bg-panel p-4"
          >
            {isComponentKind(record.kind) && section === "components" && (
              <p className="mb-3 text-ink-soft">{componentSpecs[record.kind].about}</p>
            )}
            <datalist id={listIdOf("ownTerminals", record)}>
              {looseTerminals(record).map((terminal) => (
                <option key={terminal} value={terminal} />
              ))}
            </datalist>
            <FieldList specs={fields} path={path} value={record} owner={record} name={name} />
          </td>
        </tr>
      )}
    </>
  );
});
