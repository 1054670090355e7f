import type { Changes } from "../authoring-view";

const signs = { added: "+", removed: "−", changed: "±" } as const;
const words = { added: "added", removed: "removed", changed: "changed" } as const;

/** Differences one a line, with a sign and a word for what happened. */
export function ChangeList({ changes }: { readonly changes: Changes["changes"] }) {
  return (
    <ul className="divide-y divide-hairline">
      {changes.map((change) => (
        <li key={`${change.kind} ${change.what} ${change.detail}`} className="flex gap-3 py-1.5">
          <span className="w-4 shrink-0 text-center font-mono font-semibold" aria-hidden="true">
            {signs[change.kind]}
          </span>
          <span className="min-w-0 break-words">
            <span className="font-semibold">{change.what}</span>{" "}
            <span className="text-ink-soft">{words[change.kind]}</span>
            {change.detail !== "" && <span className="block font-mono text-sm">{change.detail}</span>}
          </span>
        </li>
      ))}
    </ul>
  );
}
