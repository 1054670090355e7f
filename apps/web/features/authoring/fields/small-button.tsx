"use client";

/** An action on one item of a list, lower than a row of a table. */
export function SmallButton({
  label,
  onClick,
  children,
}: {
  readonly label: string;
  readonly onClick: () => void;
  readonly children: string;
}) {
  return (
    <button type="button" aria-label={label} onClick={onClick} className="link min-h-8 cursor-pointer">
      {children}
    </button>
  );
}
