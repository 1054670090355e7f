import clsx from "clsx";
import type { ComponentPropsWithoutRef, ReactNode } from "react";

export interface TableProps {
  /** Says what the table shows; read aloud, and visible unless `captionHidden`. */
  readonly caption: ReactNode;
  readonly captionHidden?: boolean;
  readonly className?: string;
  readonly children: ReactNode;
}

/** A ruled table that scrolls sideways inside itself when the screen is narrow. */
export function Table({ caption, captionHidden = false, className, children }: TableProps) {
  return (
    <section
      className={clsx("relative overflow-x-auto", className)}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a scrolling region must be reachable by keyboard
      tabIndex={0}
      aria-label={typeof caption === "string" ? caption : "Table"}
    >
      <table className="w-full border-collapse text-left">
        <caption className={captionHidden ? "sr-only" : "pb-2 text-left font-semibold"}>{caption}</caption>
        {children}
      </table>
    </section>
  );
}

export function TableHead({ children }: { readonly children: ReactNode }) {
  return <thead className="border-b-2 border-ink align-bottom">{children}</thead>;
}

export function TableBody({ children }: { readonly children: ReactNode }) {
  return <tbody className="align-top">{children}</tbody>;
}

export function TableRow({ className, ...rest }: ComponentPropsWithoutRef<"tr">) {
  return <tr {...rest} className={clsx("border-b border-hairline", className)} />;
}

interface CellExtras {
  /** Figures: right-aligned, fixed-width type. */
  readonly numeric?: boolean;
}

export function HeaderCell({
  numeric,
  scope = "col",
  className,
  ...rest
}: ComponentPropsWithoutRef<"th"> & CellExtras) {
  return (
    <th
      {...rest}
      scope={scope}
      className={clsx("px-3 py-2.5 font-semibold first:pl-0 last:pr-0", numeric && "text-right", className)}
    />
  );
}

export function Cell({ numeric, className, ...rest }: ComponentPropsWithoutRef<"td"> & CellExtras) {
  return (
    <td
      {...rest}
      className={clsx("px-3 py-2.5 first:pl-0 last:pr-0", numeric && "text-right font-mono", className)}
    />
  );
}
