"use client";

import clsx from "clsx";
import { type ClipboardEvent, type ComponentPropsWithRef, useState } from "react";
import { TextArea, TextInput } from "@/components/inputs";
import { useDraftActions } from "../draft/draft-context";

/** An input in a cell of a table: lower, without a frame until it is pointed at. */
export const cellClass =
  "block w-full min-w-16 min-h-9 border border-transparent bg-transparent px-2 py-1 text-ink " +
  "hover:border-edge focus:border-edge focus:bg-paper aria-invalid:border-b-2 aria-invalid:border-b-ink";

export interface ControlProps {
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
  /** Names the control where no label stands beside it: in a table. */
  readonly label?: string;
  readonly invalid?: boolean;
}

interface TextControlProps extends ControlProps {
  readonly compact?: boolean;
  readonly code?: boolean;
  readonly multiline?: boolean;
  readonly listId?: string;
  readonly decimal?: boolean;
  readonly placeholder?: string;
  /** What is shown of a value, and what is read from a text; both default to plain text. */
  readonly toText?: (value: unknown) => string;
  readonly fromText?: (text: string) => unknown;
  readonly onPaste?: (event: ClipboardEvent<HTMLInputElement | HTMLTextAreaElement>) => void;
}

const plain = (value: unknown): string =>
  value === undefined || value === null
    ? ""
    : typeof value === "object"
      ? JSON.stringify(value)
      : String(value);
const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/**
 * Text that stands for a value. What is being typed ("0.") stays as typed while it stands for the value of the draft;
 * when the draft goes another way (undo), the draft is shown.
 */
export function TextControl({
  value,
  onChange,
  label,
  invalid,
  compact = false,
  code = false,
  multiline = false,
  listId,
  decimal = false,
  placeholder,
  toText = plain,
  fromText = (text) => text,
  onPaste,
}: TextControlProps) {
  const { seal } = useDraftActions();
  const [typed, setTyped] = useState(() => toText(value));
  const shown = same(fromText(typed), value) ? typed : toText(value);
  const shared = {
    value: shown,
    autoComplete: "off",
    spellCheck: multiline && !code,
    onChange: (event: { target: { value: string } }) => {
      setTyped(event.target.value);
      onChange(fromText(event.target.value));
    },
    onBlur: () => {
      setTyped(toText(value));
      seal();
    },
    ...(placeholder === undefined ? {} : { placeholder }),
    ...(onPaste === undefined ? {} : { onPaste }),
    ...(label === undefined ? {} : { "aria-label": label }),
    ...(invalid === true ? { "aria-invalid": true as const } : {}),
  };
  if (multiline)
    return (
      <TextArea {...shared} rows={2} className={clsx("field-sizing-content", code && "font-mono text-sm")} />
    );
  const input: ComponentPropsWithRef<"input"> = {
    ...shared,
    ...(listId === undefined ? {} : { list: listId }),
    ...(decimal ? { inputMode: "decimal" as const } : {}),
  };
  return compact ? (
    <input
      {...input}
      size={decimal ? 6 : code ? 9 : 24}
      className={clsx(cellClass, code && "font-mono", decimal && "text-right font-mono")}
    />
  ) : (
    <TextInput {...input} className={clsx((code || decimal) && "font-mono")} />
  );
}
