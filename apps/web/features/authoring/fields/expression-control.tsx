"use client";

import { camelNameSchema, expressionSchema } from "@probeworthy/vehicle";
import { useId, useMemo } from "react";
import { useDraft } from "../draft/draft-context";
import type { ExpressionWords } from "../expression/expression-words";
import { formatExpression } from "../expression/format-expression";
import { parseExpression } from "../expression/parse-expression";
import { optionsOf } from "./draft-facts";
import { type ControlProps, TextControl } from "./text-control";

interface ExpressionControlProps extends ControlProps {
  readonly compact?: boolean;
  readonly optional: boolean;
  readonly inModule: boolean;
}

/**
 * A formula as text. What cannot be read yet stays in the draft as the text it is, so that nothing typed is lost; the
 * check of the draft names the place, and the reason stands here.
 */
export function ExpressionControl({ value, optional, inModule, compact, ...rest }: ExpressionControlProps) {
  const draft = useDraft();
  const errorId = useId();
  const words = useMemo<ExpressionWords>(
    () => ({ bareName: inModule ? "signal" : "condition", optionsOf: (name) => optionsOf(draft, name) }),
    [draft, inModule],
  );
  const read = (text: string): unknown => {
    if (text.trim() === "") return optional ? undefined : null;
    const parsed = parseExpression(text, words);
    return parsed.ok ? parsed.value : text;
  };
  const unread = typeof value === "string" && !camelNameSchema.safeParse(value).success ? value : undefined;
  const parsed = unread === undefined ? undefined : parseExpression(unread, words);
  return (
    <>
      <TextControl
        {...rest}
        value={value}
        code
        multiline={compact !== true}
        compact={compact === true}
        toText={(data) => textOf(data, words)}
        fromText={read}
        invalid={rest.invalid === true || unread !== undefined}
      />
      {parsed?.ok === false && (
        <p id={errorId} className="mt-1 text-sm font-semibold">
          {parsed.error.message}
          {unread !== undefined && parsed.error.at < unread.length && (
            <>
              {" "}
              (at <code>{unread.slice(parsed.error.at, parsed.error.at + 12)}</code>)
            </>
          )}
        </p>
      )}
    </>
  );
}

function textOf(data: unknown, words: ExpressionWords): string {
  if (data === undefined || data === null) return "";
  if (typeof data === "string" && !camelNameSchema.safeParse(data).success) return data;
  const parsed = expressionSchema.safeParse(data);
  // A formula of an unknown form came in with an imported file: shown as the data it is.
  return parsed.success ? formatExpression(parsed.data, words) : JSON.stringify(data);
}
