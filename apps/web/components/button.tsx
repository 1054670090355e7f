"use client";

import clsx from "clsx";
import type { ComponentPropsWithRef } from "react";
import { type ButtonKind, buttonClass } from "./button-class";
import { Icon } from "./icon";

export interface ButtonProps extends ComponentPropsWithRef<"button"> {
  readonly kind?: ButtonKind;
  /** While its work is under way: stays focusable, takes no second click, and says so to screen readers. */
  readonly busy?: boolean;
}

export function Button({
  kind = "quiet",
  busy = false,
  className,
  children,
  onClick,
  type,
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      type={type ?? "button"}
      aria-disabled={busy || undefined}
      aria-busy={busy || undefined}
      onClick={busy ? (event) => event.preventDefault() : onClick}
      className={clsx(buttonClass(kind), className)}
    >
      {kind === "danger" && <Icon name="warning" />}
      {children}
    </button>
  );
}
