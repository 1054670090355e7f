import { trainingVehicle } from "@probeworthy/training-vehicle";
import { type ChartValue, type Fault, prepareVehicle, terminalChart } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { expectedDifferences } from "./expected-differences";
import { type Severity, suppliedFaults } from "./supplied-faults";
import { must } from "./test-drive";

const chart = (faults: readonly Fault[] = []): readonly ChartValue[] =>
  must(terminalChart(must(prepareVehicle(trainingVehicle, faults)), "power-steering"));

const name = ({ row }: ChartValue): string => `${row.function}, ${row.conditionTitle}`;

/** From here on a path counts as none: the usual workshop limit for isolation. */
const isolatedOhms = 10_000;

/**
 * Whether a technician would call two readings of one row different. Volts: more than 0.12 V and more than 2.5 %, because
 * battery voltage moves by that much with the load on the alternator. Ohms: more than 0.5 Ω and more than 5 %, because
 * leads and contacts of a hand meter make that much.
 */
function differs(healthy: ChartValue, other: ChartValue): boolean {
  if (healthy.unit === "V")
    return Math.abs(other.value - healthy.value) > Math.max(0.12, 0.025 * Math.abs(healthy.value));
  const [expected, found] = [healthy, other].map(({ value }) => Math.min(value, isolatedOhms)) as [
    number,
    number,
  ];
  return Math.abs(found - expected) > Math.max(0.5, 0.05 * expected);
}

const healthy = chart();

describe("the healthy chart", () => {
  it("has each row once", () => {
    expect(new Set(healthy.map(name)).size).toBe(healthy.length);
  });

  it("reads the same again: nothing in it depends on what was simulated before", () => {
    expect(chart()).toEqual(healthy);
  });
});

describe("the chart of every supplied fault differs where a technician expects it, and nowhere else", () => {
  it("has a written expectation for every supplied fault", () => {
    expect(Object.keys(expectedDifferences).sort()).toEqual(suppliedFaults.map(({ id }) => id).sort());
  });

  const cases = suppliedFaults.flatMap((fault) => {
    const drawn = fault.faults("mild").some((mild, at) => {
      return JSON.stringify(mild) !== JSON.stringify(fault.faults("severe")[at]);
    });
    const severities: Severity[] = drawn ? ["mild", "middle", "severe"] : ["middle"];
    return severities.map((severity) => ({ fault, severity, id: fault.id }));
  });

  it.each(cases)("$id, $severity", ({ fault, severity }) => {
    const { rows, because } = expectedDifferences[fault.id] ?? { rows: [], because: "" };
    const expected = rows.flatMap(([function_, ...conditions]) =>
      conditions.map((condition) => `${function_}, ${condition}`),
    );
    const known = new Set(healthy.map(name));
    expect(expected.filter((row) => !known.has(row))).toEqual([]);
    const faulted = chart(fault.faults(severity));
    const different = faulted.filter((value, at) => differs(healthy[at] as ChartValue, value)).map(name);
    expect(different.sort(), because).toEqual([...new Set(expected)].sort());
  });
});
