"use client";

import clsx from "clsx";
import type { ComponentPropsWithRef, ReactNode } from "react";
import { useFieldWiring } from "./field";

const control =
  "block w-full min-h-11 rounded-sheet border border-edge bg-paper px-3 py-2 text-ink placeholder:text-ink-soft " +
  "hover:border-ink disabled:cursor-not-allowed disabled:bg-panel disabled:text-ink-soft " +
  "aria-invalid:border-2 aria-invalid:border-ink";

export function TextInput({ className, type = "text", ...rest }: ComponentPropsWithRef<"input">) {
  return <input {...useFieldWiring()} {...rest} type={type} className={clsx(control, className)} />;
}

export function TextArea({ className, rows = 4, ...rest }: ComponentPropsWithRef<"textarea">) {
  return <textarea {...useFieldWiring()} {...rest} rows={rows} className={clsx(control, className)} />;
}

/** The browser's own list: it works with every keyboard, screen reader and tablet. */
export function Select({ className, children, ...rest }: ComponentPropsWithRef<"select">) {
  return (
    <select {...useFieldWiring()} {...rest} className={clsx(control, "pr-8", className)}>
      {children}
    </select>
  );
}

export interface CheckboxProps extends Omit<ComponentPropsWithRef<"input">, "type"> {
  readonly label: ReactNode;
  readonly hint?: ReactNode;
}

/** The whole line is the target, 44 px high. */
export function Checkbox({ label, hint, className, ...rest }: CheckboxProps) {
  return <Choice type="checkbox" label={label} hint={hint} className={className} {...rest} />;
}

export function Radio({ label, hint, className, ...rest }: CheckboxProps) {
  return <Choice type="radio" label={label} hint={hint} className={className} {...rest} />;
}

function Choice({ label, hint, className, type, ...rest }: CheckboxProps & { type: "checkbox" | "radio" }) {
  return (
    <label className={clsx("flex min-h-11 cursor-pointer items-start gap-3 py-2", className)}>
      <input {...rest} type={type} className="mt-0.5 size-5 shrink-0 cursor-pointer" />
      <span>
        {label}
        {hint !== undefined && <span className="block text-sm text-ink-soft">{hint}</span>}
      </span>
    </label>
  );
}
