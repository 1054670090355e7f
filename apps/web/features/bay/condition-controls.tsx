import type { LearnerView } from "@probeworthy/evaluation";
import { ConditionNumber } from "./condition-number";
import { Segmented } from "./segmented";

type Condition = LearnerView["conditions"][number];

/** Controls for operating conditions, one below the other. */
export function ConditionControls({
  conditions,
  onSet,
}: {
  readonly conditions: readonly Condition[];
  readonly onSet: (name: string, value: string | number) => void;
}) {
  return (
    <div className="space-y-3">
      {conditions.map((condition) =>
        condition.kind === "choice" ? (
          <Segmented
            key={condition.name}
            label={condition.title}
            value={condition.value}
            options={condition.options.map((option) => ({ value: option.value, label: option.title }))}
            onChoose={(value) => onSet(condition.name, value)}
          />
        ) : (
          <ConditionNumber
            key={condition.name}
            condition={condition}
            onSet={(value) => onSet(condition.name, value)}
          />
        ),
      )}
    </div>
  );
}

export interface ConditionGroup {
  readonly title: string;
  readonly conditions: readonly Condition[];
}

/** The conditions that act on the system at hand, and the rest under its headings in the document's order. */
export function groupConditions(
  conditions: readonly Condition[],
  own: readonly string[],
): { readonly first: readonly Condition[]; readonly groups: readonly ConditionGroup[] } {
  const isFirst = ({ name, group }: Condition) =>
    own.length === 0 || own.includes(name) || group === undefined || name === "key";
  const rest = conditions.filter((condition) => !isFirst(condition));
  const titles = [...new Set(rest.map(({ group }) => group ?? ""))];
  return {
    first: conditions.filter(isFirst),
    groups: titles.map((title) => ({ title, conditions: rest.filter(({ group }) => group === title) })),
  };
}
