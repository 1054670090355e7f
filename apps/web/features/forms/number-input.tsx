"use client";

import { TextInput } from "@/components/inputs";
import { emptyAsNull } from "./form-values";

/** The part of a form field's controller that a number needs. */
export interface NumberFieldHandle {
  readonly name: string;
  readonly value: unknown;
  readonly ref: (element: HTMLInputElement | null) => void;
  readonly onBlur: () => void;
  readonly onChange: (value: unknown) => void;
}

export interface NumberInputProps {
  readonly field: NumberFieldHandle;
  readonly label?: string;
  readonly className?: string;
}

/**
 * A number as text: comma or point, empty is null. What is being typed ("0.") stays as typed until the field is left;
 * what is no number then stays too, so that the schema can say so.
 */
export function NumberInput({ field, label, className }: NumberInputProps) {
  return (
    <TextInput
      inputMode="decimal"
      autoComplete="off"
      name={field.name}
      ref={field.ref}
      {...(label === undefined ? {} : { "aria-label": label })}
      className={className}
      value={String(field.value ?? "")}
      onChange={(event) => field.onChange(settled(event.target.value))}
      onBlur={() => {
        field.onChange(emptyAsNull(field.value));
        field.onBlur();
      }}
    />
  );
}

function settled(text: string): unknown {
  const value = emptyAsNull(text);
  if (value === null) return null;
  return String(value) === text ? value : text;
}
