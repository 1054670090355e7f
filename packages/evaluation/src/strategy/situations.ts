import type { ConditionValues, VehicleDocument } from "@probeworthy/vehicle";
import type { Command } from "../command";
import type { AttemptContext } from "../context";
import { fallBack, heldBy } from "../decide/set-conditions";
import { shopTime } from "../shop-time";

/** How the car is put for a test: every condition of it, everything plugged in. */
export interface Situation {
  readonly title: string;
  readonly conditions: ConditionValues;
}

/** Conditions of a terminal chart that are looked at, at most. */
const chartLimit = 8;

/**
 * The situations in which tests are planned: as handed over (always the first), the conditions of the system's terminal
 * chart, and the one in which each intermittent candidate of the scenario shows. No two have the same conditions.
 */
export function situationsOf({ scenario, document, variant }: AttemptContext): readonly Situation[] {
  const initial = Object.fromEntries(document.conditions.map(({ name, initial }) => [name, initial]));
  const whole = (...changes: ConditionValues[]): ConditionValues =>
    fallBack(document.conditions, Object.assign({ ...initial, ...variant.conditions }, ...changes));
  const chart = new Map(
    (document.systems.find(({ id }) => id === scenario.system)?.chart ?? []).map(
      ({ conditionTitle, conditions }) =>
        [JSON.stringify(conditions), { conditionTitle, conditions }] as const,
    ),
  );
  const moved = scenario.pool.flatMap(({ faults }) =>
    faults.flatMap(({ kind, condition, is }): Situation[] =>
      kind === "intermittent" && typeof condition === "string" && typeof is === "string"
        ? [
            {
              title: `As handed over, ${titleOf(condition, is, document)}`,
              conditions: whole(scenario.startConditions, { [condition]: is }),
            },
          ]
        : [],
    ),
  );
  const all = [
    { title: "As handed over", conditions: whole(scenario.startConditions) },
    ...moved,
    ...[...chart.values()].slice(0, chartLimit).map(({ conditionTitle, conditions }) => ({
      title: conditionTitle,
      conditions: whole(conditions),
    })),
  ];
  return [
    ...new Map(all.toReversed().map((one) => [JSON.stringify(one.conditions), one])).values(),
  ].toReversed();
}

function titleOf(condition: string, value: string, document: VehicleDocument): string {
  const definition = document.conditions.find(({ name }) => name === condition);
  const option =
    definition?.kind === "choice" ? definition.options.find((one) => one.value === value) : undefined;
  return `${definition?.title ?? condition}: ${option?.title ?? value}`;
}

/** The command that leads from one situation to another; none where they are the same. */
export function wayTo(
  from: Situation,
  to: Situation,
  document: Pick<VehicleDocument, "conditions">,
): Command[] {
  const values = Object.fromEntries(
    document.conditions.flatMap((definition) => {
      const { name } = definition;
      const value = to.conditions[name];
      const held =
        definition.kind === "number" && heldBy(definition, document.conditions, to.conditions) !== null;
      return value === undefined || value === from.conditions[name] || held ? [] : [[name, value]];
    }),
  );
  return Object.keys(values).length === 0 ? [] : [{ type: "setConditions", values }];
}

/** Shop time of that way, s. */
export function secondsOfWay(from: Situation, to: Situation): number {
  if (from === to) return 0;
  return shopTime.setConditions.before + shopTime.setConditions.after;
}
