import { trainingVehicle } from "@probeworthy/training-vehicle";
import { parseVehicle, prepareVehicle, terminalChart, type VehicleDocument } from "@probeworthy/vehicle";
import { checkDraft, extractSystem } from "@probeworthy/vehicle/authoring";
import { exportTables, importTables } from "@probeworthy/vehicle/authoring/tables";
import { describe, expect, it } from "vitest";

// What an instructor starts from must read as the car it comes from: the whole car is the reference for its parts.

const whole = prepareVehicle(trainingVehicle);

function chartOf(document: VehicleDocument, system: string) {
  const vehicle = document === trainingVehicle ? whole : prepareVehicle(document);
  if (!vehicle.ok) throw new Error(JSON.stringify(vehicle.error));
  const chart = terminalChart(vehicle.value, system);
  if (!chart.ok) throw new Error(JSON.stringify(chart.error));
  return chart.value;
}

/**
 * Other consumers are missing from shared cables, bars and grounds: a lamp on the same feed makes 0.2 V, a relay's coil on
 * the same bar a quarter of its ohms; megohms of leakage are no value.
 */
function agrees(value: number, whole: number, unit: "V" | "Ω"): boolean {
  if (value === whole) return true;
  if (unit === "V") return Math.abs(value - whole) <= Math.max(0.2, 0.01 * Math.abs(whole));
  const isLeakage = value > 1e5 && whole > 1e5;
  return isLeakage || Math.abs(value - whole) <= 0.03 + 0.25 * Math.abs(whole);
}

describe.each(trainingVehicle.systems.map(({ id, title }) => [title, id] as const))("%s alone", (_, id) => {
  const extracted = extractSystem(trainingVehicle, [id]);
  const part = extracted.ok ? extracted.value : undefined;

  it("can be used as it stands, without an error", () => {
    const parsed = parseVehicle(part);
    expect(parsed.ok ? [] : parsed.error).toEqual([]);
    const errors = (document: unknown) =>
      checkDraft(document).messages.flatMap(({ severity, message }) =>
        severity === "error" ? [message] : [],
      );
    const known = errors(trainingVehicle);
    expect(errors(part).filter((message) => !known.includes(message))).toEqual([]);
  });

  it("reads what the whole car reads", () => {
    if (part === undefined) throw new Error(`there is no system ${id}`);
    const [expected, found] = [chartOf(trainingVehicle, id), chartOf(part, id)];
    expect(found.length).toBe(expected.length);
    const hasStarter = part.components.some(({ id: component }) => component === "M2");
    const differing = expected.flatMap(({ row, value, unit }, position) => {
      // Without the starter nothing pulls the battery down.
      if (row.conditions.key === "start" && !hasStarter) return [];
      const own = found[position]?.value ?? Number.NaN;
      return agrees(own, value, unit)
        ? []
        : [`${row.point}, ${row.conditionTitle}: ${own} instead of ${value}`];
    });
    expect(differing).toEqual([]);
  });
});

it("all systems together are the whole car, but for what belongs to none", () => {
  const extracted = extractSystem(
    trainingVehicle,
    trainingVehicle.systems.map(({ id }) => id),
  );
  if (!extracted.ok) throw new Error(extracted.error.code);
  const kept = new Set(extracted.value.components.map(({ id }) => id));
  const listed = trainingVehicle.systems.flatMap(({ components }) => components);
  expect(listed.filter((id) => !kept.has(id))).toEqual([]);
});

it("a system that is not there is named", () => {
  expect(extractSystem(trainingVehicle, ["gearbox"])).toEqual({
    ok: false,
    error: { code: "unknown_system", systems: ["gearbox"] },
  });
});

it("the car's two lists give its connectors and conductors back", () => {
  const again = importTables(exportTables(trainingVehicle));
  expect(again.messages).toEqual([]);
  expect(again.connectors).toEqual(trainingVehicle.connectors);
  expect(again.conductors).toEqual(trainingVehicle.conductors);
});
