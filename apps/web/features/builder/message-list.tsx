"use client";

import type { ScenarioMessage } from "./builder-view";
import { jumpTo } from "./messages";
import { pathWords } from "./path-words";

/** What keeps the scenario from being published, and what looks like an oversight; each leads to its field. */
export function MessageList({ messages }: { readonly messages: readonly ScenarioMessage[] }) {
  const errors = messages.filter(({ severity }) => severity === "error");
  const warnings = messages.filter(({ severity }) => severity === "warning");
  return (
    <div className="space-y-3">
      {errors.length === 0 ? (
        <p>Complete: it can be previewed and published.</p>
      ) : (
        <Group title={`Before it can be published (${errors.length})`} messages={errors} />
      )}
      {warnings.length > 0 && <Group title="Worth a look" messages={warnings} />}
    </div>
  );
}

function Group({
  title,
  messages,
}: {
  readonly title: string;
  readonly messages: readonly ScenarioMessage[];
}) {
  return (
    <div>
      <h3>{title}</h3>
      <ul className="mt-1 max-h-64 overflow-y-auto">
        {messages.map(({ path, message }) => (
          <li key={`${path} ${message}`}>
            <button
              type="button"
              onClick={() => jumpTo(path)}
              className="link min-h-8 cursor-pointer text-left"
            >
              {pathWords(path)}
            </button>
            : {message}
          </li>
        ))}
      </ul>
    </div>
  );
}
