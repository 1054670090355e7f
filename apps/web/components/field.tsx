"use client";

import { createContext, type ReactNode, useContext, useId } from "react";
import { Icon } from "./icon";

interface FieldWiring {
  readonly id: string;
  readonly "aria-describedby": string | undefined;
  readonly "aria-invalid": true | undefined;
  readonly required: boolean | undefined;
}

const FieldContext = createContext<FieldWiring | undefined>(undefined);

/** The attributes that tie a control to its label, hint and error; empty outside a <Field>. */
export function useFieldWiring(): Partial<FieldWiring> {
  return useContext(FieldContext) ?? {};
}

export interface FieldProps {
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  /** What is wrong and what would be right. */
  readonly error?: ReactNode;
  readonly required?: boolean;
  readonly className?: string;
  /** One TextInput, TextArea or Select. */
  readonly children: ReactNode;
}

export function Field({ label, hint, error, required, className, children }: FieldProps) {
  const id = useId();
  const hintId = `${id}-hint`;
  const errorId = `${id}-error`;
  const hasError = error !== undefined && error !== null && error !== "";
  const describedBy = [hint === undefined ? "" : hintId, hasError ? errorId : ""].filter(Boolean).join(" ");
  return (
    <div className={className}>
      <label htmlFor={id} className="block font-semibold">
        {label}
        {required === false && <span className="font-normal text-ink-soft"> (optional)</span>}
      </label>
      {hint !== undefined && (
        <p id={hintId} className="text-sm text-ink-soft">
          {hint}
        </p>
      )}
      <div className="mt-1">
        <FieldContext
          value={{
            id,
            "aria-describedby": describedBy === "" ? undefined : describedBy,
            "aria-invalid": hasError || undefined,
            required: required || undefined,
          }}
        >
          {children}
        </FieldContext>
      </div>
      {hasError && (
        <p id={errorId} className="mt-1 flex items-start gap-1.5 text-sm font-semibold">
          <Icon name="warning" className="mt-0.5 size-4" />
          {error}
        </p>
      )}
    </div>
  );
}
