import { type ConditionDefinition, type ConditionValues, ok } from "@probeworthy/vehicle";
import { standing } from "../context";
import type { Refusal } from "../event";
import { makeChange } from "./change-car";
import { type Bench, type Decision, noticeSymptoms, refuse } from "./outcome";

/** Why a number cannot be turned up now, or null when it can. */
export function heldBy(
  condition: Extract<ConditionDefinition, { kind: "number" }>,
  definitions: readonly ConditionDefinition[],
  values: ConditionValues,
): string | null {
  if (condition.fixed === true) return "It is what it is today: it cannot be set from the bench.";
  const { onlyWhen } = condition;
  if (onlyWhen === undefined || onlyWhen.is.includes(String(values[onlyWhen.condition]))) return null;
  const other = definitions.find((candidate) => candidate.name === onlyWhen.condition);
  const wanted = onlyWhen.is.map((value) =>
    other?.kind === "choice"
      ? (other.options.find((option) => option.value === value)?.title ?? value)
      : value,
  );
  return `Only with ${other?.title ?? onlyWhen.condition} at ${wanted.join(" or ")}.`;
}

/** Numbers that depend on a choice fall to their minimum when it no longer holds (key off: the engine stops). */
export function fallBack(
  definitions: readonly ConditionDefinition[],
  values: ConditionValues,
): ConditionValues {
  const settled: ConditionValues = { ...values };
  for (const condition of definitions) {
    if (condition.kind !== "number" || condition.onlyWhen === undefined) continue;
    if (heldBy(condition, definitions, values) !== null) settled[condition.name] = condition.minimum;
  }
  return settled;
}

function problem(bench: Bench, wanted: ConditionValues): Refusal | null {
  const { conditions } = bench.context.document;
  const merged = { ...bench.car.conditions, ...wanted };
  for (const [name, value] of Object.entries(wanted)) {
    const path = `values.${name}`;
    const condition = conditions.find((candidate) => candidate.name === name);
    if (condition === undefined) {
      return { code: "unknown_condition", message: `The vehicle has no condition named ${name}.`, path };
    }
    const { title } = condition;
    if (condition.kind === "choice") {
      if (condition.options.some((option) => option.value === value)) continue;
      const offered = condition.options.map((option) => option.value).join(", ");
      return { code: "invalid_condition", message: `${title} has the positions ${offered}.`, path };
    }
    if (typeof value !== "number" || value < condition.minimum || value > condition.maximum) {
      const range = `${condition.minimum} to ${condition.maximum} ${condition.unit}`.trim();
      return { code: "invalid_condition", message: `${title} goes from ${range}.`, path };
    }
    const steps = (value - condition.minimum) / condition.step;
    if (Math.abs(steps - Math.round(steps)) > 1e-6) {
      return {
        code: "invalid_condition",
        message: `${title} moves in steps of ${condition.step} ${condition.unit}.`.replace(" .", "."),
        path,
      };
    }
    const reason = heldBy(condition, conditions, merged);
    const changes = value !== bench.car.conditions[name];
    if (reason !== null && changes && value !== condition.minimum) {
      return { code: "invalid_condition", message: `${title} cannot be set now. ${reason}`, path };
    }
    if (condition.fixed === true && changes) {
      return { code: "invalid_condition", message: `${title} cannot be set. ${reason ?? ""}`.trim(), path };
    }
  }
  return null;
}

/** Turns the key, revs the engine, steers … all values of one command at once. */
export function setConditions(bench: Bench, wanted: ConditionValues): Decision {
  const refusal = problem(bench, wanted);
  if (refusal !== null) return refuse(refusal.code, refusal.message, refusal.path);
  const definitions = bench.context.document.conditions;
  const conditions = fallBack(definitions, { ...bench.car.conditions, ...wanted });
  if (definitions.every(({ name }) => conditions[name] === bench.car.conditions[name])) {
    return refuse("already_so", "The vehicle is already in this condition.", "values");
  }
  const car = makeChange(bench, "setConditions", { conditions });
  if (!car.ok) return car;
  const items = noticeSymptoms(bench.context, car.value);
  if (!items.ok) return items;
  return ok({
    car: car.value,
    observation: { kind: "noticed", context: standing(car.value), items: [...items.value] },
  });
}
