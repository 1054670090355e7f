import { trainingVehicle } from "@probeworthy/training-vehicle";
import type { ConditionValues } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { cranking, idling, keyOff, keyOn, TestDrive, turning } from "./test-drive";

const lit = (conditions: ConditionValues): ConditionValues => ({ ...idling, ...conditions });
const night = lit({ lightSwitch: "dipped" });

/** A round of everything a driver of this car can switch, in the order of an ordinary trip. */
const trip: readonly ConditionValues[] = [
  { ...keyOff, doors: "open" },
  { ...keyOff, doors: "closed" },
  keyOn,
  cranking,
  idling,
  { ...night, mainBeam: "off" },
  { ...night, mainBeam: "on" },
  { ...night, mainBeam: "off", indicator: "left" },
  { ...night, indicator: "right" },
  { ...night, indicator: "hazard" },
  { ...turning(8), lightSwitch: "side", indicator: "off" },
  { ...turning(4, 80), brakePedal: "pressed" },
  { ...idling, brakePedal: "released", reverse: "on" },
  { ...idling, reverse: "off", horn: "pressed" },
  { ...idling, horn: "rest", trailer: "coupled", brakePedal: "pressed", indicator: "hazard" },
  { ...keyOff, trailer: "none", brakePedal: "released", indicator: "off", lightSwitch: "off" },
];

describe("a healthy car on an ordinary trip (common practice, no source)", () => {
  it("shows nothing abnormal and stores no code", () => {
    const car = new TestDrive();
    for (const conditions of trip) {
      car.set(conditions).wait(2);
      const abnormal = car.now.symptoms.filter(({ normal }) => !normal).map(({ text }) => text);
      expect(abnormal, JSON.stringify(conditions)).toEqual([]);
    }
    car.set(keyOn).wait(2);
    for (const component of trainingVehicle.components)
      if (component.kind === "module" && component.monitors)
        expect(car.codes(component.id), component.id).toEqual([]);
  });

  it("asks the battery for 140 to 210 A while cranking and leaves it 9.8 to 11.5 V", () => {
    const car = new TestDrive([], cranking);
    expect(car.volts("G1:+")).toBeGreaterThan(9.8);
    expect(car.volts("G1:+")).toBeLessThan(11.5);
    expect(Math.abs(car.now.amps("M2"))).toBeGreaterThan(140);
    expect(Math.abs(car.now.amps("M2"))).toBeLessThan(210);
  });

  it("loses less than 0.2 V between battery post and starter, and on the way back, while cranking", () => {
    const car = new TestDrive([], cranking);
    expect(car.volts("G1:+", "K2:30")).toBeLessThan(0.3);
    expect(car.volts("K2:30", "K2:45")).toBeLessThan(0.2);
    expect(car.volts("XS2")).toBeLessThan(0.2);
  });

  it("charges with 14.0 to 14.6 V at the battery, lights on or off", () => {
    for (const conditions of [idling, { ...night, engineSpeed: 2000 }]) {
      const volts = new TestDrive([], conditions).volts("G1:+");
      expect(volts).toBeGreaterThan(14);
      expect(volts).toBeLessThan(14.6);
    }
  });

  const dips = { ...night, mainBeam: "off" };
  const tail = lit({ lightSwitch: "side", brakePedal: "pressed", indicator: "hazard", reverse: "on" });
  const feeds: readonly (readonly [point: string, conditions: ConditionValues, least: number])[] = [
    ["X110.1:h", dips, 0.3],
    ["F45:2", dips, 0.4],
    ["X115.1:h", dips, 0.75],
    ["X116.1:h", dips, 0.75],
    ["X130.3:h", tail, 0.6],
    ["X130.2:h", tail, 0.6],
    ["X104.9:h", tail, 0.3],
    ["X109.1:h", lit({ horn: "pressed" }), 0.3],
  ];
  it.each(feeds)("%s keeps its load within tenths of a volt of the battery", (point, conditions, least) => {
    expect(new TestDrive([], conditions).volts("G1:+", point)).toBeLessThan(least);
  });

  const grounds: readonly (readonly [point: string, conditions: ConditionValues])[] = [
    ["X115.2:h", dips],
    ["X116.2:h", dips],
    ["X130.1:h", tail],
    ["X131.1:h", tail],
    ["X104.8:h", tail],
    ["X109.2:h", lit({ horn: "pressed" })],
  ];
  it.each(grounds)("%s stands less than 0.1 V above battery negative under load", (point, conditions) => {
    const car = new TestDrive([], conditions);
    expect(car.volts(point)).toBeLessThan(0.1);
    expect(car.volts(point)).toBeGreaterThan(0);
  });

  it("sleeps with some 20 mA and is awake with some hundreds of milliamperes", () => {
    const car = new TestDrive([], keyOff);
    const awake = Math.abs(car.now.amps("G1"));
    car.wait(900);
    const asleep = Math.abs(car.now.amps("G1"));
    expect(awake).toBeGreaterThan(0.1);
    expect(asleep).toBeLessThan(0.05);
    expect(asleep).toBeGreaterThan(0.003);
  });
});
