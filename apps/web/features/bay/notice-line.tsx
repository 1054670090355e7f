import type { Command } from "@probeworthy/evaluation";
import { Icon } from "@/components/icon";
import type { Notice } from "./use-attempt";

export interface NoticeLineProps {
  readonly notice: Notice | undefined;
  readonly about: readonly Command["type"][];
}

/** A refusal in words, beside what was clicked. The live region of the bay reads it aloud, so this one stays quiet. */
export function NoticeLine({ notice, about }: NoticeLineProps) {
  if (notice === undefined || notice.unreachable || !about.includes(notice.about)) return null;
  return (
    <p
      data-testid="refusal"
      className="mt-2 flex items-start gap-1.5 border-l-4 border-ink bg-panel px-2 py-1.5 text-sm"
    >
      <Icon name="warning" className="mt-0.5 size-4" />
      <span>
        <strong>{notice.title}.</strong> {notice.text}
      </span>
    </p>
  );
}
