import clsx from "clsx";
import type { ComponentPropsWithRef } from "react";

/** The action of one row of a table: quiet, so that a column of them does not outshout the data. */
export function RowButton({ className, type, ...rest }: ComponentPropsWithRef<"button">) {
  return (
    <button
      {...rest}
      type={type ?? "button"}
      className={clsx("link -my-2 min-h-11 cursor-pointer whitespace-nowrap", className)}
    />
  );
}
