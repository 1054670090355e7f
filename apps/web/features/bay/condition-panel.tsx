import type { LearnerView } from "@probeworthy/evaluation";
import { ConditionControls, groupConditions } from "./condition-controls";

/** What of a group is not as it stands at rest, in one line, so that a closed group hides nothing. */
function groupSummary(conditions: LearnerView["conditions"]): string {
  return conditions
    .map((condition) =>
      condition.kind === "choice"
        ? (condition.options.find(({ value }) => value === condition.value)?.title ?? condition.value)
        : `${condition.value} ${condition.unit}`.trim(),
    )
    .join(" · ");
}

export interface ConditionPanelProps {
  readonly conditions: LearnerView["conditions"];
  /** Names of those that act on the system at hand; empty shows all of them open. */
  readonly own: readonly string[];
  readonly onSet: (name: string, value: string | number) => void;
}

/** About twenty conditions: those of the system first, the others folded away under their headings. */
export function ConditionPanel({ conditions, own, onSet }: ConditionPanelProps) {
  const { first, groups } = groupConditions(conditions, own);
  return (
    <div className="space-y-3">
      <ConditionControls conditions={first} onSet={onSet} />
      {groups.map((group) => (
        <details key={group.title} className="group border-t border-hairline pt-1">
          <summary className="flex min-h-11 cursor-pointer flex-wrap items-center justify-between gap-x-3">
            <span className="font-semibold">{group.title}</span>
            <span className="text-sm text-ink-soft group-open:hidden">
              {groupSummary([...group.conditions])}
            </span>
          </summary>
          <div className="pt-2 pb-3">
            <ConditionControls conditions={group.conditions} onSet={onSet} />
          </div>
        </details>
      ))}
    </div>
  );
}
