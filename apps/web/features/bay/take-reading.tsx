"use client";

import type { Prediction } from "@probeworthy/evaluation";
import { type FormEvent, type RefObject, useState } from "react";
import { Button } from "@/components/button";
import { Field } from "@/components/field";
import { TextInput } from "@/components/inputs";
import { parsePrediction } from "./reading-words";

export interface TakeReadingProps {
  readonly required: boolean;
  readonly busy: boolean;
  /** Grows with every reading recorded: the sign to empty the field. */
  readonly readingCount: number;
  readonly buttonRef: RefObject<HTMLButtonElement | null>;
  readonly onTake: (prediction: Prediction | undefined) => void;
}

/** What do you expect, then look. */
export function TakeReading({ required, busy, readingCount, buttonRef, onTake }: TakeReadingProps) {
  const [text, setText] = useState("");
  const [error, setError] = useState<string>();
  const [counted, setCounted] = useState(readingCount);
  if (counted !== readingCount) {
    setCounted(readingCount);
    setText("");
  }
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const prediction = parsePrediction(text);
    if (!prediction.ok) {
      setError(prediction.error.message);
      return;
    }
    if (required && prediction.value === undefined) {
      setError("Write what you expect first: this job asks for it before every reading.");
      return;
    }
    setError(undefined);
    if (!busy) onTake(prediction.value);
  };
  return (
    <form onSubmit={submit} className="flex flex-wrap items-end gap-2" noValidate>
      <Field
        label="You expect"
        required={required}
        className="min-w-28 flex-1"
        {...(error === undefined ? {} : { error })}
      >
        <TextInput
          value={text}
          onChange={(event) => {
            setText(event.target.value);
            setError(undefined);
          }}
          placeholder="12.4 or OL"
          autoComplete="off"
          className="font-mono"
        />
      </Field>
      <Button
        ref={buttonRef}
        type="submit"
        kind="primary"
        busy={busy}
        aria-keyshortcuts="M"
        className="whitespace-nowrap"
      >
        Take reading
      </Button>
    </form>
  );
}
