import type { ConditionValues, VehicleDocument } from "@probeworthy/vehicle";

export type Row = VehicleDocument["systems"][number]["chart"][number];

/** A state of the car in which a chart gives values. */
export interface Situation {
  readonly title: string;
  readonly conditions: ConditionValues;
}

/** Rows that measure volts at one point in several situations; `against` defaults to battery negative. */
export const voltRows = (
  point: string,
  function_: string,
  situations: readonly Situation[],
  against?: string,
): Row[] =>
  situations.map(({ title, conditions }) => ({
    point,
    ...(against === undefined ? {} : { against }),
    function: function_,
    quantity: "volts",
    conditions,
    conditionTitle: title,
  }));

/** A row that measures ohms with the key off and these connectors unplugged. */
export const ohmRow = (point: string, function_: string, unplugged: string[], against?: string): Row => ({
  point,
  ...(against === undefined ? {} : { against }),
  function: function_,
  quantity: "ohms",
  conditions: { key: "off" },
  conditionTitle: unplugged.length === 0 ? "key off" : `key off, ${unplugged.join(" and ")} unplugged`,
  ...(unplugged.length === 0 ? {} : { unplugged }),
});
