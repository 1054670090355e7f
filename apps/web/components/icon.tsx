const paths = {
  warning: "M8 1.8 15 14.2H1ZM8 6v4M8 11.6v1.2",
  check: "M2.5 8.5 6.5 12.5 13.5 4",
  cross: "M3.5 3.5l9 9M12.5 3.5l-9 9",
  chevron: "M4 6.5 8 10.5 12 6.5",
} as const;

export type IconName = keyof typeof paths;

/** A small line drawing beside words; never the only carrier of a meaning, so always hidden from screen readers. */
export function Icon({
  name,
  className = "size-4",
}: {
  readonly name: IconName;
  readonly className?: string;
}) {
  return (
    <svg
      viewBox="0 0 16 16"
      className={`shrink-0 ${className}`}
      fill="none"
      stroke="currentColor"
      strokeWidth={1.6}
      strokeLinejoin="round"
      strokeLinecap="round"
      aria-hidden="true"
      focusable="false"
    >
      <path d={paths[name]} />
    </svg>
  );
}
