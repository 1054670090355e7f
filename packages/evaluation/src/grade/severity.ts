import { type Fault, faultSchema, faultTable } from "@probeworthy/vehicle";

/** For halving only: an open contact stands for this resistance, Ω. */
const openOhms = 1e6;

/**
 * The severity halfway between two sets of faults that differ in their numbers only: by decades where both numbers are
 * above 0, else by the straight mean. An open counts as a very high resistance. Null when there is nothing in between.
 */
export function halfway(from: readonly Fault[], to: readonly Fault[]): Fault[] | null {
  if (from.length !== to.length || from.length === 0) return null;
  const middle: Fault[] = [];
  for (const [index, low] of from.entries()) {
    const high = to[index];
    const between = high === undefined ? null : halfwayFault(asResistance(low), asResistance(high));
    if (between === null) return null;
    middle.push(between);
  }
  return middle;
}

const asResistance = (fault: Fault): Fault =>
  fault.kind === "open" ? { kind: "seriesResistance", at: fault.at, ohms: openOhms } : fault;

function halfwayFault(low: Fault, high: Fault): Fault | null {
  if (low.kind !== high.kind) return null;
  if (low.kind === "weakBattery" && high.kind === "weakBattery")
    return {
      ...low,
      stateOfCharge: (low.stateOfCharge + high.stateOfCharge) / 2,
      internalOhmsFactor: decades(low.internalOhmsFactor, high.internalOhmsFactor),
    };
  const { severity } = faultTable[low.kind];
  if (!severity) return low;
  const [from, to] = [numberIn(low, severity.field), numberIn(high, severity.field)];
  if (from === undefined || to === undefined) return null;
  const between = severity.scale === "log" ? decades(from, to) : (from + to) / 2;
  return faultSchema.parse({ ...low, [severity.field]: between });
}

function numberIn(fault: Fault, field: string): number | undefined {
  const value: unknown = Object.entries(fault).find(([name]) => name === field)?.[1];
  return typeof value === "number" ? value : undefined;
}

const decades = (low: number, high: number): number => Number(Math.sqrt(low * high).toPrecision(6));
