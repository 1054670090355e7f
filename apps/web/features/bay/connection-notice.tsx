import { Button } from "@/components/button";
import { Icon } from "@/components/icon";
import type { Notice } from "./use-attempt";

export interface ConnectionNoticeProps {
  readonly online: boolean;
  readonly notice: Notice | undefined;
  readonly onRetry: () => void;
}

/** Laid over the lower edge, so that nothing moves when the connection drops. */
export function ConnectionNotice({ online, notice, onRetry }: ConnectionNoticeProps) {
  const unreachable = notice?.unreachable === true;
  if (online && !unreachable) return null;
  return (
    <div
      role="alert"
      className="fixed inset-x-4 bottom-4 z-30 mx-auto flex max-w-2xl flex-wrap items-center justify-between gap-3 border-2 border-ink bg-paper p-3"
    >
      <p className="flex min-w-0 flex-1 basis-80 items-start gap-2">
        <Icon name="warning" className="mt-0.5 size-5" />
        <span>
          <strong>{unreachable ? notice.title : "You are offline"}.</strong>{" "}
          {unreachable
            ? notice.text
            : "Everything recorded so far is kept. Go on when the connection is back."}
        </span>
      </p>
      {unreachable && (
        <Button kind="primary" onClick={onRetry}>
          Try again
        </Button>
      )}
    </div>
  );
}
