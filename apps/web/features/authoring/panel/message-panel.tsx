"use client";

import { useDraft } from "../draft/draft-context";
import { type AuthoringMessage, sentence } from "../draft/messages";
import { pathWords } from "../draft/path-words";

interface MessagePanelProps {
  readonly messages: readonly AuthoringMessage[];
  readonly onJump: (path: string) => void;
}

/** What keeps the vehicle from being published, and what looks like an oversight; each leads to its field. */
export function MessagePanel({ messages, onJump }: MessagePanelProps) {
  const errors = messages.filter(({ severity }) => severity === "error");
  const warnings = messages.filter(({ severity }) => severity === "warning");
  if (messages.length === 0) return <p>Complete, and nothing looks odd. It can be published.</p>;
  return (
    <div className="space-y-4">
      {errors.length === 0 ? (
        <p>Complete: it can be published.</p>
      ) : (
        <Group title={`Before it can be published (${errors.length})`} messages={errors} onJump={onJump} />
      )}
      {warnings.length > 0 && (
        <Group title={`Worth a look (${warnings.length})`} messages={warnings} onJump={onJump} />
      )}
    </div>
  );
}

function Group({ title, messages, onJump }: MessagePanelProps & { readonly title: string }) {
  const draft = useDraft();
  return (
    <div>
      <h2 className="text-base">{title}</h2>
      <ul className="mt-1 divide-y divide-hairline">
        {messages.map(({ path, message }) => (
          <li key={`${path} ${message}`} className="py-1">
            <button
              type="button"
              onClick={() => onJump(path)}
              className="link min-h-8 cursor-pointer text-left"
            >
              {pathWords(draft, path)}
            </button>
            <span className="block">{sentence(message)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
