"use client";

import type { LearnerView } from "@probeworthy/evaluation";
import type { ConditionDefinition, ConditionValues, Fault } from "@probeworthy/vehicle";
import { useCallback, useState } from "react";
import { Button } from "@/components/button";
import { ConditionPanel } from "@/features/bay/condition-panel";
import type { PaperIndex } from "@/features/papers/papers-view";
import type { LivePlaces } from "../vehicles/vehicles-view";
import { LiveFaults } from "./live-faults";
import { PotentialSheet } from "./potential-sheet";

export interface LiveDrawingProps {
  readonly papers: string;
  readonly index: PaperIndex;
  readonly initialSystem: string;
  readonly conditions: readonly ConditionDefinition[];
  readonly places: LivePlaces;
}

type Shown = LearnerView["conditions"][number];

/** The condition as its control wants it. Here everything may be set, the weather too. */
function shownCondition(definition: ConditionDefinition, values: ConditionValues): Shown {
  const { name, title } = definition;
  const group = definition.group === undefined ? {} : { group: definition.group };
  const value = values[name] ?? definition.initial;
  if (definition.kind === "choice")
    return { kind: "choice", name, title, ...group, value: String(value), options: definition.options };
  const { unit, minimum, maximum, step, onlyWhen, initial } = definition;
  const held = onlyWhen !== undefined && !onlyWhen.is.includes(String(values[onlyWhen.condition] ?? ""));
  return {
    kind: "number",
    name,
    title,
    ...group,
    unit,
    minimum,
    maximum,
    step,
    value: held ? minimum : typeof value === "number" ? value : initial,
    adjustable: !held,
    ...(held ? { reason: "Needs another position of the key." } : {}),
  };
}

/** For teaching: the car is set up as one likes, faults are put in, and the drawing shows what that does at once. */
export function LiveDrawing({ papers, index, initialSystem, conditions, places }: LiveDrawingProps) {
  const [values, setValues] = useState<ConditionValues>(() =>
    Object.fromEntries(conditions.map(({ name, initial }) => [name, initial])),
  );
  const [faults, setFaults] = useState<readonly Fault[]>([]);
  const inputFor = useCallback(
    (system: string) => ({ of: "vehicle" as const, system, conditions: values, faults: [...faults] }),
    [values, faults],
  );
  return (
    <div className="grid items-start gap-6 lg:grid-cols-[minmax(0,1fr)_19rem]">
      <PotentialSheet papers={papers} index={index} initialSystem={initialSystem} inputFor={inputFor} />
      <div className="no-print min-w-0 space-y-6 lg:sticky lg:top-4 lg:max-h-[calc(100dvh-2rem)] lg:overflow-y-auto lg:p-1">
        <section aria-labelledby="live-faults">
          <h2 id="live-faults" className="mb-2 border-b border-ink pb-0.5 text-base">
            Faults in the car
          </h2>
          <LiveFaults places={places} faults={faults} onChange={setFaults} />
        </section>
        <section aria-labelledby="live-conditions">
          <h2 id="live-conditions" className="mb-2 border-b border-ink pb-0.5 text-base">
            Operating conditions
          </h2>
          <ConditionPanel
            conditions={conditions.map((one) => shownCondition(one, values))}
            own={firstConditions}
            onSet={(name, value) => setValues((before) => ({ ...before, [name]: value }))}
          />
          <Button
            className="mt-3"
            onClick={() => {
              setValues(Object.fromEntries(conditions.map(({ name, initial }) => [name, initial])));
              setFaults([]);
            }}
          >
            Back to the car at rest
          </Button>
        </section>
      </div>
    </div>
  );
}

/** Any sheet may be looked at here, so only the key comes before the groups. */
const firstConditions = ["key", "engineSpeed"];
