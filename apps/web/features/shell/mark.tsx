/** Our mark: a lead touching a test point. */
export function Mark({ className = "size-7" }: { readonly className?: string }) {
  return (
    <svg
      viewBox="0 0 28 28"
      className={`shrink-0 ${className}`}
      fill="none"
      aria-hidden="true"
      focusable="false"
    >
      <path d="M2 20h6.5M15.5 20H26" stroke="currentColor" strokeWidth="2.25" />
      <circle cx="12" cy="20" r="3.5" stroke="currentColor" strokeWidth="2" />
      <path d="M12 20 22.5 3.5" className="stroke-copper-fill" strokeWidth="2.5" strokeLinecap="round" />
    </svg>
  );
}
