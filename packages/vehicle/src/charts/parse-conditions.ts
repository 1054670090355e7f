import { conditionProblems } from "../document/check-references";
import type { ConditionValues } from "../document/condition";
import type { VehicleDocument } from "../document/vehicle-document";
import type { VehicleIndex } from "../document/vehicle-index";
import { err, ok, type Result } from "../result";
import { toNumber } from "./chart-columns";

export interface ChartConditions {
  readonly conditions: ConditionValues;
  readonly unplugged: readonly string[];
}

/**
 * Reads a condition cell: the title of a condition that a chart of the document uses (`Engine idling`), or assignments
 * such as `key=on; engineSpeed=800; unplugged=X10`. Pairs are parted by `;` or `&`, unplugged connectors by spaces or
 * `+`. An empty cell means the initial conditions. A choice is named by its value or its title.
 */
export function parseConditions(
  text: string,
  document: VehicleDocument,
  index: VehicleIndex,
): Result<ChartConditions, string> {
  const trimmed = text.trim();
  if (trimmed === "") return ok({ conditions: {}, unplugged: [] });
  const same = (title: string): boolean => title.trim().toLowerCase() === trimmed.toLowerCase();
  const preset = document.systems.flatMap(({ chart }) => chart).find((row) => same(row.conditionTitle));
  if (preset) return ok({ conditions: preset.conditions, unplugged: preset.unplugged ?? [] });
  const conditions: Record<string, string | number> = {};
  const unplugged: string[] = [];
  for (const part of trimmed.split(/[;&]/)) {
    if (part.trim() === "") continue;
    const [name = "", value, ...rest] = part.split("=").map((piece) => piece.trim());
    if (value === undefined || value === "" || rest.length > 0)
      return err(
        `"${part.trim()}" is neither a condition title of this vehicle nor name=value, such as key=on`,
      );
    if (name.toLowerCase() === "unplugged") {
      for (const connector of value.split(/[\s+]+/)) {
        if (!index.connectors.has(connector)) return err(`there is no connector ${connector}`);
        unplugged.push(connector);
      }
      continue;
    }
    conditions[name] = toValue(name, value, index);
  }
  const [problem] = conditionProblems(conditions, index);
  return problem === undefined ? ok({ conditions, unplugged }) : err(problem);
}

function toValue(name: string, text: string, index: VehicleIndex): string | number {
  const definition = index.conditions.get(name);
  if (definition?.kind !== "choice") return toNumber(text) ?? text;
  const option = definition.options.find(({ title }) => title.toLowerCase() === text.toLowerCase());
  return option?.value ?? text;
}
