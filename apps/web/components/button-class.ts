import clsx from "clsx";

export type ButtonKind = "primary" | "quiet" | "danger";

/** Class names for a link that looks like a button; a real button uses <Button>. */
export function buttonClass(kind: ButtonKind = "quiet"): string {
  return clsx(
    "inline-flex min-h-11 cursor-pointer items-center justify-center gap-2 rounded-sheet border-2 px-4 py-2 font-semibold",
    "transition-colors disabled:cursor-not-allowed disabled:opacity-60 aria-busy:cursor-progress",
    {
      "border-copper bg-copper text-on-copper hover:border-ink hover:bg-ink hover:text-paper":
        kind === "primary",
      "border-edge bg-transparent text-ink hover:border-ink hover:bg-panel": kind === "quiet",
      "border-ink bg-transparent text-ink hover:bg-ink hover:text-paper": kind === "danger",
    },
  );
}
