/** Links to lines of the log further down. */
export function LineLinks({ lines }: { readonly lines: readonly number[] }) {
  if (lines.length === 0) return null;
  return (
    <span className="inline-flex flex-wrap gap-x-2">
      {lines.map((line) => (
        <a key={line} href={`#line-${line}`} className="link inline-block min-h-6 whitespace-nowrap">
          line {line}
        </a>
      ))}
    </span>
  );
}
