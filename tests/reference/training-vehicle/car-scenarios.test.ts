import { scenarioSchema } from "@probeworthy/evaluation";
import { checkScenario } from "@probeworthy/evaluation/server";
import { carScenarios, trainingVehicle } from "@probeworthy/training-vehicle";
import { type ConditionValues, type Fault, testPoints } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { concrete } from "./supplied-faults";
import { cranking, idling, keyOff, keyOn, TestDrive } from "./test-drive";

const night: ConditionValues = { ...idling, lightSwitch: "side" };
const everything: ConditionValues = {
  ...idling,
  lightSwitch: "dipped",
  brakePedal: "pressed",
  indicator: "hazard",
  horn: "pressed",
};

/** What a technician would let the car do before believing that nothing is wrong. */
const trials: readonly ConditionValues[] = [
  keyOn,
  cranking,
  idling,
  { ...idling, engineSpeed: 2000, lightSwitch: "dipped" },
  { ...idling, lightSwitch: "dipped", mainBeam: "on" },
  night,
  { ...night, brakePedal: "pressed" },
  { ...night, trailer: "coupled", brakePedal: "pressed" },
  { ...idling, steeringEffort: 6 },
  { ...idling, indicator: "left" },
  { ...idling, indicator: "right" },
  { ...idling, horn: "pressed" },
  ...["engineBay", "column", "dash", "tail"].map((harnessMoved) => ({ ...everything, harnessMoved })),
];
const rest: ConditionValues = {
  ...keyOff,
  lightSwitch: "off",
  mainBeam: "off",
  brakePedal: "released",
  indicator: "off",
  horn: "rest",
  trailer: "none",
  harnessMoved: "still",
};

interface Seen {
  readonly noticed: readonly string[];
  readonly volts: ReadonlyMap<string, number>;
}

const modules = ["A1", "A4", "A5"];

/** Everything noticed and every voltage to battery negative over all trials, from one car that keeps its memory. */
function tryOut(faults: readonly Fault[]): Seen {
  const car = new TestDrive(faults);
  const noticed: string[] = [];
  const volts = new Map<string, number>();
  trials.forEach((conditions, trial) => {
    const { now } = car.set({ ...rest, ...conditions });
    for (const { id, text } of now.symptoms) noticed.push(`${trial} ${id} ${text}`);
    for (const point of points) volts.set(`${trial} ${point}`, now.volts(point) - now.volts("G1:-"));
  });
  car.set({ ...rest, key: "on" }).wait(2);
  for (const module of modules) noticed.push(`${module} ${car.codes(module)?.join(" ")}`);
  car.set(rest).wait(1200);
  const drain = Math.round(Math.abs(car.now.amps("G1")) * 50);
  return { noticed: [...noticed, `rest current ${drain} · 20 mA`], volts };
}

const fresh = new TestDrive();
const points = testPoints(fresh.vehicle, fresh.state)
  .filter(({ accessible }) => accessible)
  .map(({ id }) => id);
let healthy: Seen | undefined;
const healthyCar = (): Seen => {
  healthy ??= tryOut([]);
  return healthy;
};

describe("the jobs about starting, charging, lighting and horn", () => {
  it.each(carScenarios.map((scenario) => [scenario.id, scenario] as const))(
    "%s is a scenario of this car",
    (_, scenario) => {
      expect(scenarioSchema.parse(JSON.parse(JSON.stringify(scenario)))).toEqual(scenario);
      expect(checkScenario(scenario, trainingVehicle)).toEqual([]);
      expect(scenario.instructorNote.length).toBeGreaterThan(80);
    },
  );

  it("have one id each, one id for each of their causes, and all three levels", () => {
    const ids = carScenarios.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const causes = carScenarios.flatMap(({ pool }) => pool.map(({ id }) => id));
    expect(new Set(causes).size).toBe(causes.length);
    expect(new Set(carScenarios.map(({ level }) => level)).size).toBe(3);
  });

  const causes = carScenarios.flatMap(({ id, pool }) =>
    pool.map((entry) => ({ scenario: id, id: entry.id, entry })),
  );
  it.each(causes)("$scenario: $id can be noticed and measured", ({ entry }) => {
    const seen = tryOut(entry.faults.map((template) => concrete(template, "middle")));
    const good = healthyCar();
    const differs = seen.noticed.filter((text) => !good.noticed.includes(text));
    const measured = [...seen.volts].filter(
      ([place, volts]) => Math.abs(volts - (good.volts.get(place) ?? 0)) > 0.03,
    );
    if (entry.normal) {
      expect(differs).toEqual([]);
      return;
    }
    expect(differs).not.toEqual([]);
    // 0.5 % and a few digits of a workshop meter on its 20 V range: 0.03 V is beyond doubt near the battery's voltage.
    // A rest current is measured in amperes, a broken coupling leaves every voltage right: that is what they teach.
    if (!differs.every((text) => /^rest current|steeringWeight/.test(text))) expect(measured).not.toEqual([]);
  });
});
