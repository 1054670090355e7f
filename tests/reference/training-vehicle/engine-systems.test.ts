import type { ConditionValues, Fault } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { cranking, idling, keyOff, keyOn, TestDrive } from "./test-drive";

// Ranges without another source are common practice, no source.

const at = (coolantTemperature: number): ConditionValues => ({ ...idling, coolantTemperature });
const pedalAt = (accelerator: number): ConditionValues => ({ ...keyOn, accelerator });
const load: ConditionValues = { ...idling, engineSpeed: 3000, accelerator: 60, roadSpeed: 80 };

const open = (place: string): Fault => ({ kind: "open", at: place });
const resistance = (place: string, ohms: number): Fault => ({ kind: "seriesResistance", at: place, ohms });

const mainFan = (car: TestDrive): number => car.volts("X212.1:h", "X212.2:h");
const auxiliaryFan = (car: TestDrive): number => car.volts("X213.1:h", "X213.2:h");
const pump = (car: TestDrive): number => car.volts("X208.1:h", "X208.2:h");

function expectWithin(value: number, least: number, most: number): void {
  expect(value).toBeGreaterThan(least);
  expect(value).toBeLessThan(most);
}

describe("radiator fans", () => {
  it("stand still at 88 °C, help each other at 100 °C, and give their most at 110 °C", () => {
    const car = new TestDrive([], at(88));
    expect(Math.abs(mainFan(car))).toBeLessThan(0.1);
    expect(Math.abs(auxiliaryFan(car))).toBeLessThan(0.1);
    car.set(at(100));
    expectWithin(mainFan(car), 7, 10);
    expectWithin(auxiliaryFan(car), 10, 12.5);
    car.set(at(110));
    expectWithin(mainFan(car), 12.5, 14.3);
    expectWithin(Math.abs(car.now.amps("M10")), 18, 30);
  });

  it("drop on the series resistor what Ohm's law says for the fan's current", () => {
    const car = new TestDrive([], at(100));
    expect(car.volts("R5:1", "R5:2") / Math.abs(car.now.amps("M11"))).toBeCloseTo(0.3, 4);
  });

  it("draw less from the battery feed than the motor carries while the pulses are short", () => {
    const car = new TestDrive([], at(100));
    const motor = Math.abs(car.now.amps("M10"));
    const feed = Math.abs(car.now.amps("F21"));
    // Power in = power out of a lossless chopper, give or take its transistors.
    expect(feed / motor).toBeCloseTo(mainFan(car) / car.volts("X211.1:h", "X211.2:h"), 1);
    expect(feed).toBeLessThan(0.75 * motor);
  });

  it("run flat out, main fan alone and without a code, when the request does not arrive", () => {
    const car = new TestDrive([open("W318")], { ...keyOn, coolantTemperature: 20 }).wait(2);
    expect(mainFan(car)).toBeGreaterThan(10);
    expect(Math.abs(auxiliaryFan(car))).toBeLessThan(0.1);
    expect(car.codes("A2")).toEqual([]);
    expect(car.symptom("radiatorFan").normal).toBe(false);
  });

  it("both run, with a code and a substituted temperature, without the coolant sensor", () => {
    const car = new TestDrive([], { ...keyOn, coolantTemperature: 20 }).unplug("X205").wait(2);
    expect(mainFan(car)).toBeGreaterThan(10);
    expect(auxiliaryFan(car)).toBeGreaterThan(8);
    expect(car.codes("A2")).toEqual(["P0118-15"]);
    expect(car.liveValue("A2", "coolant")).toBe(80);
    expect(car.liveValue("A4", "coolant")).toBe(80);
  });

  it("discharge the battery all night through a welded relay contact", () => {
    const car = new TestDrive([{ kind: "contactWelded", component: "K10" }], keyOff).wait(900);
    expect(Math.abs(car.now.amps("G1"))).toBeGreaterThan(4);
    expect(car.symptom("auxiliaryFan").text).toMatch(/key is off/);
    expect(Math.abs(car.volts("K10:86"))).toBeLessThan(0.1);
  });
});

describe("fuel pump", () => {
  it("gets nothing while the engine stands, 7 to 9 V at idle, nearly the battery's volts under load", () => {
    const car = new TestDrive([], keyOn);
    expect(Math.abs(pump(car))).toBeLessThan(0.1);
    car.set(cranking);
    expectWithin(pump(car), 9, 11.5);
    car.set(idling);
    expectWithin(pump(car), 7, 9);
    expectWithin(Math.abs(car.now.amps("M13")), 2, 4);
    car.set(load);
    expectWithin(pump(car), 13, 14.3);
    expectWithin(Math.abs(car.now.amps("M13")), 4, 7);
  });

  it("loses on a bad ground what the ohms and its own current make", () => {
    const ohms = 1.5;
    const car = new TestDrive([resistance("XE11", ohms)], load);
    expectWithin(car.volts("X208.2:h") / (ohms * Math.abs(car.now.amps("M13"))), 0.98, 1.05);
    expect(car.symptom("enginePull").text).toMatch(/no power/);
  });

  it("runs while cranking but not with the engine running when the crankshaft sensor is silent", () => {
    const car = new TestDrive([open("W361")], cranking);
    expect(pump(car)).toBeGreaterThan(9);
    car.set(idling);
    expect(Math.abs(pump(car))).toBeLessThan(0.1);
    expect(car.liveValue("A2", "pumpOn")).toBe(0);
    expect(car.symptom("enginePull").text).toMatch(/dies away/);
  });

  it("hums with the key off only through a welded contact", () => {
    const welded = new TestDrive([{ kind: "contactWelded", component: "K11" }], keyOff);
    expect(welded.symptom("fuelPumpSound").normal).toBe(false);
    const shorted = new TestDrive([{ kind: "shortToGround", at: "X200.17:h", ohms: 1 }], keyOff);
    expect(shorted.symptom("fuelPumpSound").normal).toBe(true);
    expect(shorted.set(keyOn).symptom("fuelPumpSound").normal).toBe(false);
  });
});

describe("pedal and throttle", () => {
  it("keep track 2 at half of track 1 and the throttle's pair at 5 V together over the whole travel", () => {
    const car = new TestDrive();
    for (const travel of [0, 25, 50, 75, 100]) {
      car.set(pedalAt(travel));
      const ratio = car.volts("X200.2:h", "X202.3:h") / car.volts("X200.5:h", "X202.6:h");
      expectWithin(ratio, 1.96, 2.04);
      expectWithin(car.volts("X200.8:h", "X203.4:h") + car.volts("X200.9:h", "X203.4:h"), 4.95, 5.05);
      expect(Math.abs(car.liveValue("A2", "pedal") - travel)).toBeLessThanOrEqual(2);
    }
    expect(car.wait(1).codes("A2")).toEqual([]);
  });

  const losses: readonly (readonly [title: string, fault: Fault, codes: readonly string[]])[] = [
    ["open signal of track 1: pulled to ground", open("W347"), ["P2122-11", "P2138-62"]],
    ["open supply of track 2: pulled to ground", open("W349"), ["P2127-11", "P2138-62"]],
    ["600 Ω in the ground of track 1: out of proportion", resistance("X201.5", 600), ["P2138-62"]],
    ["600 Ω in the supply of track 1: out of proportion", resistance("X202.1", 600), ["P2138-62"]],
    [
      "open throttle motor: no current",
      { kind: "internalOpen", component: "M12", terminal: "1" },
      ["P2101-13"],
    ],
  ];
  it.each(losses)("%s", (_, fault, codes) => {
    const car = new TestDrive([fault], { ...idling, accelerator: 0 }).wait(1);
    car.set({ ...idling, accelerator: 100 }).wait(1);
    expect(car.codes("A2")).toEqual(codes);
    expect(car.symptom("throttleResponse").normal).toBe(false);
    expect(car.symptom("engineMessage").normal).toBe(false);
  });

  it("lose pedal track 1 and the throttle sensor together, and get the pedal's supply back at the right plug", () => {
    const short: Fault = { kind: "internalShort", component: "B11", terminal: "5V", other: "31", ohms: 2 };
    const car = new TestDrive([short], keyOn).wait(1);
    expect(car.volts("X202.1:h")).toBeLessThan(1);
    expect(car.codes("A2")).toEqual(expect.arrayContaining(["P2122-11", "P0121-11", "P0221-11", "P0641-16"]));
    car.unplug("X202");
    expect(car.volts("X203.1:h")).toBeLessThan(1);
    car.unplug("X203");
    expectWithin(car.volts("X203.1:h"), 4.9, 5.1);
  });

  it("show a resistance in the shared sensor ground at the coolant as well", () => {
    const car = new TestDrive([resistance("X200.10", 500)], { ...keyOn, coolantTemperature: 80 }).wait(1);
    expect(car.codes("A2")).toEqual(["P2135-62"]);
    expect(car.liveValue("A2", "coolant")).toBeLessThan(65);
    for (const point of ["X205.2:h", "X206.2:h", "X203.4:h"]) expect(car.volts(point)).toBeGreaterThan(0.3);
  });
});

describe("coolant and intake air temperature", () => {
  it("measure 2.4 to 2.6 kΩ at 20 °C, as this common kind of sensor does", () => {
    const car = new TestDrive([], { ...keyOn, coolantTemperature: 20, intakeTemperature: 20 });
    // By voltage and current, with the circuit live: the pull-up's current through the sensor.
    for (const [signal, ground, sensor] of [
      ["X205.1:h", "X205.2:h", "B12"],
      ["X206.1:h", "X206.2:h", "B13"],
    ] as const)
      expectWithin(car.volts(signal, ground) / Math.abs(car.now.amps(sensor)), 2400, 2600);
  });

  it.each([-20, 0, 20, 40, 60, 80, 100, 115])("show %d °C to the scan tool within 2 °C", (celsius) => {
    const car = new TestDrive([], {
      ...keyOn,
      coolantTemperature: celsius,
      intakeTemperature: Math.min(80, celsius),
    });
    expect(Math.abs(car.liveValue("A2", "coolant") - celsius)).toBeLessThanOrEqual(2);
    expect(Math.abs(car.liveValue("A2", "intake") - Math.min(80, celsius))).toBeLessThanOrEqual(2);
  });

  it("look cold, and store nothing, with corrosion in the signal; hot with a path to ground", () => {
    const cold = new TestDrive([resistance("X205.1", 600)], at(90)).wait(2);
    expect(cold.codes("A2")).toEqual([]);
    expect(cold.symptom("coolantGauge").text).toMatch(/colder/);
    const hot = new TestDrive([{ kind: "shortToGround", at: "X205.1:h", ohms: 180 }], at(35)).wait(2);
    expect(hot.codes("A2")).toEqual([]);
    expect(hot.symptom("coolantGauge").text).toMatch(/hotter/);
  });
});
