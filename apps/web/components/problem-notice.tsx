import type { ReactNode } from "react";
import type { Problem } from "@/features/http/problem";
import { Icon } from "./icon";

export interface ProblemNoticeProps {
  readonly problem: Pick<Problem, "title"> &
    Partial<Pick<Problem, "detail" | "errors" | "requestId" | "status">>;
  /** A way on: a retry button, a link. */
  readonly action?: ReactNode;
}

/** A refusal in words: what happened, what to do, which fields. Announced when it appears. */
export function ProblemNotice({ problem, action }: ProblemNoticeProps) {
  const { title, detail, errors, requestId, status } = problem;
  return (
    <div role="alert" className="border-l-4 border-ink bg-panel p-4">
      <p className="flex items-start gap-2 font-semibold">
        <Icon name="warning" className="mt-0.5 size-5" />
        {title}
      </p>
      {detail !== undefined && detail !== title && <p className="mt-1">{detail}</p>}
      {errors !== undefined && errors.length > 0 && (
        <ul className="mt-2 list-disc space-y-1 pl-5">
          {errors.map((error) => (
            <li key={`${error.path} ${error.message}`}>
              {error.path !== "" && <code className="font-semibold">{error.path}: </code>}
              {error.message}
            </li>
          ))}
        </ul>
      )}
      {status !== undefined && status >= 500 && requestId !== undefined && (
        <p className="mt-2 text-sm">
          Request number <code>{requestId}</code>
        </p>
      )}
      {action !== undefined && <div className="mt-3">{action}</div>}
    </div>
  );
}
