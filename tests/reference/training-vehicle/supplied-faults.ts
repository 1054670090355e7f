import type { FaultTemplate, ScenarioDocument } from "@probeworthy/evaluation";
import { steeringScenarios } from "@probeworthy/training-vehicle";
import { type Fault, faultSchema } from "@probeworthy/vehicle";

export type Severity = "mild" | "middle" | "severe";

const share: Record<Severity, number> = { mild: 0, middle: 0.5, severe: 1 };

/** A template made concrete at one end or in the middle (of the decades for a log range) of its ranges. */
export function concrete(template: FaultTemplate, severity: Severity): Fault {
  const filled = Object.entries(template).map(([field, value]) => {
    if (typeof value !== "object") return [field, value];
    const { from, to, spread } = value;
    const at = share[severity];
    return [field, spread === "log" ? from * (to / from) ** at : from + (to - from) * at];
  });
  return faultSchema.parse(Object.fromEntries(filled));
}

export interface SuppliedFault {
  readonly id: string;
  readonly scenario: ScenarioDocument;
  readonly normal: boolean;
  faults(severity: Severity): Fault[];
}

/** Every candidate of the steering scenarios, once: the mixed pool repeats those of the others. */
export const suppliedFaults: readonly SuppliedFault[] = [
  ...new Map(
    [...steeringScenarios].reverse().flatMap((scenario) =>
      scenario.pool.map((entry): [string, SuppliedFault] => [
        entry.id,
        {
          id: entry.id,
          scenario,
          normal: entry.normal ?? false,
          faults: (severity) => entry.faults.map((template) => concrete(template, severity)),
        },
      ]),
    ),
  ).values(),
];
