/** A hand-over can rule out dozens of causes at once; the first few stand for them. */
export function RuledOut({ titles }: { readonly titles: readonly string[] }) {
  const shown = 3;
  if (titles.length <= shown + 1) return <>{titles.join("; ")}</>;
  return (
    <details>
      <summary className="min-h-6 cursor-pointer">
        {titles.slice(0, shown).join("; ")} and {titles.length - shown} more
      </summary>
      {titles.slice(shown).join("; ")}
    </details>
  );
}
