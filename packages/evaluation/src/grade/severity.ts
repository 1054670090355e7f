import type { Fault } from "@probeworthy/vehicle";

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
  switch (low.kind) {
    case "seriesResistance":
    case "shortToGround":
    case "shortToSupply":
    case "shortBetween":
      return high.kind === low.kind ? { ...low, ohms: decades(low.ohms, high.ohms) } : null;
    case "sensorOffset":
    case "sensorStuck":
      return high.kind === low.kind ? { ...low, volts: (low.volts + high.volts) / 2 } : null;
    case "motorHot":
      return high.kind === "motorHot" ? { ...low, celsius: (low.celsius + high.celsius) / 2 } : null;
    case "weakBattery":
      return high.kind === "weakBattery"
        ? {
            ...low,
            stateOfCharge: (low.stateOfCharge + high.stateOfCharge) / 2,
            internalOhmsFactor: decades(low.internalOhmsFactor, high.internalOhmsFactor),
          }
        : null;
    case "open":
    case "fuseBlown":
    case "internalOpen":
      return low;
  }
}

const decades = (low: number, high: number): number => Number(Math.sqrt(low * high).toPrecision(6));
