import "server-only";
import { type Fault, faultTable } from "@probeworthy/vehicle";

const figure = (value: number): string => String(Number(value.toPrecision(3)));

/** A concrete fault in one line, severity included. */
export function describeFault(fault: Fault): string {
  const { title, severity } = faultTable[fault.kind];
  if (fault.kind === "weakBattery")
    return `${title}: ${fault.component} at ${figure(fault.stateOfCharge * 100)} % charge, ${figure(fault.internalOhmsFactor)} times its usual internal resistance`;
  const places = Object.entries(fault).flatMap(([field, value]) =>
    typeof value === "string" && field !== "kind" && !conditionFields.has(field) ? [value] : [],
  );
  const amounts = Object.entries(fault).flatMap(([field, value]) =>
    typeof value === "number" && field === severity?.field
      ? [value >= 1e6 && severity.unit === "Ω" ? "open" : `${figure(value)} ${severity.unit}`.trim()]
      : [],
  );
  return [`${title}: ${places.join(", ")}`, ...amounts, ...whenShown(fault)].join(", ");
}

const conditionFields = new Set(["condition", "is"]);

function whenShown(fault: Fault): string[] {
  if (fault.kind !== "intermittent") return [];
  const { condition, is, above, below } = fault;
  if (is !== undefined) return [`while ${condition} is ${is}`];
  return [
    ...(above === undefined ? [] : [`while ${condition} is above ${figure(above)}`]),
    ...(below === undefined ? [] : [`while ${condition} is below ${figure(below)}`]),
  ];
}
