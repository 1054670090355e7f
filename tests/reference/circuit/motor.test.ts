import {
  advanceMotorHeat,
  type CircuitElement,
  type Motor,
  motorHeatSeconds,
  operatingPoint,
} from "@probeworthy/circuit";
import { describe, expect, it } from "vitest";

const motor = (numbers: Partial<Motor> = {}): Motor => ({
  kind: "motor",
  id: "m",
  plus: "a",
  minus: "0",
  ohms: 0.5,
  motorConstant: 0.05,
  ...numbers,
});
const volts = (value: number): CircuitElement => ({
  kind: "voltageSource",
  id: "v",
  positive: "a",
  negative: "0",
  volts: value,
});
const amps = (value: number): CircuitElement => ({
  kind: "currentSource",
  id: "i",
  from: "0",
  to: "a",
  amps: value,
});

function solved(elements: readonly CircuitElement[]) {
  const result = operatingPoint({ ground: "0", elements });
  if (!result.ok) throw new Error(result.error.message);
  const { value } = result;
  return {
    amps: value.amps("m"),
    volts: value.volts("a"),
    speed: value.quantity("m", "radiansPerSecond"),
    torque: value.quantity("m", "newtonMetres"),
    winding: value.quantity("m", "celsiusWinding"),
    point: value,
  };
}

describe("closed forms of a constant-field motor", () => {
  it.each([12, 6, -12])("runs without load at v/K and stalls at v/R, at %d V", (supply) => {
    const free = solved([volts(supply), motor()]);
    expect(free.speed).toBeCloseTo(supply / 0.05, 9);
    expect(free.amps).toBeCloseTo(0, 9);
    const held = solved([volts(supply), motor({ locked: true })]);
    expect(held.speed).toBe(0);
    expect(held.amps).toBeCloseTo(supply / 0.5, 9);
    expect(held.torque).toBeCloseTo((0.05 * supply) / 0.5, 9);
  });

  it.each([0.1, 0.4, 0.8])("falls along a straight line of speed against a torque of %d N·m", (load) => {
    const { speed, amps: drawn } = solved([volts(12), motor({ loadTorque: load })]);
    expect(drawn).toBeCloseTo(load / 0.05, 6);
    expect(speed).toBeCloseTo(12 / 0.05 - (0.5 * load) / 0.05 ** 2, 5);
  });

  it("stays put under a load above its stall torque of 1.2 N·m, and draws the stall current", () => {
    const { speed, amps: drawn } = solved([volts(12), motor({ loadTorque: 1.5 })]);
    expect(Math.abs(speed)).toBeLessThan(0.2);
    expect(drawn).toBeCloseTo(24, 1);
  });

  it("balances a fan: K·i = c·w²", () => {
    const { speed, torque, amps: drawn } = solved([volts(12), motor({ loadPerSpeedSquared: 1e-5 })]);
    // c·w² + (K²/R)·w − K·v/R = 0, solved by the quadratic formula.
    const b = 0.05 ** 2 / 0.5;
    const expected = (-b + Math.sqrt(b ** 2 + 4e-5 * ((0.05 * 12) / 0.5))) / 2e-5;
    expect(speed).toBeCloseTo(expected, 6);
    expect(torque).toBeCloseTo(1e-5 * speed ** 2, 9);
    expect(drawn).toBeCloseTo(torque / 0.05, 9);
  });

  it("has one constant for torque and back-EMF (from memory: Kt = Ke in SI)", () => {
    const run = solved([volts(12), motor({ loadPerSpeed: 1e-3, viscousFriction: 1e-4 })]);
    const torquePerAmp = run.torque / run.amps;
    const emfPerSpeed = (12 - 0.5 * run.amps) / run.speed;
    expect(torquePerAmp).toBeCloseTo(emfPerSpeed, 12);
    // So what is left of the electrical power after the copper loss is shaft power.
    expect(run.torque * run.speed).toBeCloseTo(12 * run.amps - 0.5 * run.amps ** 2, 9);
  });

  it("takes off both brushes' drop", () => {
    const { amps: drawn } = solved([volts(12), motor({ locked: true, brushVolts: 1.5 })]);
    expect(drawn).toBeCloseTo(10.5 / 0.5, 9);
  });

  it("generates when it is turned from outside, and the power comes from the shaft", () => {
    const load: CircuitElement = { kind: "resistor", id: "r", a: "a", b: "0", ohms: 1 };
    const {
      speed,
      amps: drawn,
      volts: made,
    } = solved([load, motor({ shaftTorque: 0.5, viscousFriction: 1e-4 })]);
    expect(made).toBeGreaterThan(0);
    expect(drawn).toBeCloseTo(-made, 9);
    expect(0.5 * speed).toBeCloseTo(made ** 2 / 1 + 0.5 * drawn ** 2 + 1e-4 * speed ** 2, 9);
  });

  it("has more ohms when hot: 1.3144 times at 100 °C (0.00393 /K, from memory)", () => {
    const { amps: drawn } = solved([volts(12), motor({ locked: true, celsius: 100 })]);
    expect(24 / drawn).toBeCloseTo(1.3144, 10);
  });
});

describe("heat", () => {
  const heat = {
    windingToHousing: 0.5,
    housingToAmbient: 1,
    windingCapacity: 60,
    housingCapacity: 900,
    ambientCelsius: 25,
    heatInBalance: true,
  };
  const held = (current: number, extra: Partial<Motor> = {}) =>
    solved([amps(current), motor({ locked: true, ohms: 0.02, ...heat, ...extra })]);

  // Fixed point T = [Ta + k(1 − 20α)]/(1 − kα), k = Rth·I²·R20 (computed from the thermal formulas of
  // firgelliauto.com, motor thermal calculator, and α = 0.00393 /K): Rth 1.5 K/W, R20 20 mΩ, Ta 25 °C.
  it.each([
    [20, 37.84],
    [30, 55.8],
    [40, 85.32],
    [50, 133.43],
    [60, 216.33],
  ])("%d A hold the winding at %d °C", (current, celsius) => {
    expect(Math.abs(held(current).winding - celsius)).toBeLessThanOrEqual(0.005);
  });

  it("runs away above 92.1 A, where k·α = 1: no balance is found, and the motor is named", () => {
    const k = 1.5 * 92 ** 2 * 0.02;
    expect(held(92).winding / ((25 + k * (1 - 20 * 0.00393)) / (1 - k * 0.00393))).toBeCloseTo(1, 6);
    for (const current of [92.2, 120]) {
      const result = operatingPoint({
        ground: "0",
        elements: [amps(current), motor({ locked: true, ohms: 0.02, ...heat })],
      });
      expect(result).toMatchObject({ ok: false, error: { code: "no_convergence", element: "m" } });
    }
  });

  it("holds the temperatures it is given unless it is to be in balance", () => {
    const { winding, point } = held(60, { heatInBalance: false, celsius: 70, housingCelsius: 40 });
    expect(winding).toBeCloseTo(70, 9);
    expect(point.quantity("m", "celsiusHousing")).toBeCloseTo(40, 9);
  });

  // Source: https://rftools.io/calculators/motor/motor-heat-dissipation : 100 W at 80 % lose 25 W; 1.8 K/W and 35 °C
  // ambient give a rise of 45 K, a winding at 80 °C; at 70 % (42.9 W) 112 °C.
  it.each([
    [25, 80, 0.5],
    [42.857, 112, 0.5],
  ])("a loss of %d W gives %d °C", (watts, celsius, digits) => {
    const hot = 1 + 0.00393 * (celsius - 20);
    const {
      winding,
      amps: drawn,
      volts: across,
    } = solved([
      amps(10),
      motor({
        locked: true,
        ohms: watts / (100 * hot),
        windingToHousing: 0.6,
        housingToAmbient: 1.2,
        windingCapacity: 60,
        housingCapacity: 900,
        ambientCelsius: 35,
        heatInBalance: true,
      }),
    ]);
    expect(Math.abs(winding - celsius)).toBeLessThanOrEqual(digits);
    expect(drawn * across).toBeCloseTo((winding - 35) / 1.8, 6);
  });

  it("warms the housing by what brushes and bearings lose", () => {
    const {
      point,
      speed,
      amps: drawn,
    } = solved([
      volts(12),
      motor({ ...heat, brushVolts: 1, coulombFriction: 0.02, viscousFriction: 1e-4, loadTorque: 0.1 }),
    ]);
    const copper = 12 * drawn - drawn - 0.05 * speed * drawn;
    const others = drawn + 0.02 * speed + 1e-4 * speed ** 2;
    const housing = point.quantity("m", "celsiusHousing");
    expect(housing).toBeCloseTo(25 + copper + others, 3);
    expect(point.quantity("m", "celsiusWinding")).toBeCloseTo(housing + 0.5 * copper, 3);
  });
});

describe("two-node heat at a constant loss", () => {
  // Computed by matrix exponential (SciPy): R_wh 0.5 K/W, C_w 60 J/K, R_ha 1.5 K/W, C_h 900 J/K, 60 W, 25 °C.
  const heat = { windingToHousing: 0.5, housingToAmbient: 1.5, windingCapacity: 60, housingCapacity: 900 };
  const cold = { winding: 25, housing: 25 };

  it("has modes of 28.088 s and 1441.912 s", () => {
    const [fast, slow] = motorHeatSeconds(heat);
    expect(fast).toBeCloseTo(28.088, 3);
    expect(slow).toBeCloseTo(1441.912, 3);
  });

  it.each([
    [30, 44.167, 25.716],
    [60, 51.981, 27.164],
    [300, 68.869, 40.453],
    [1200, 104.216, 75.065],
    [3600, 137.28, 107.441],
    [1e6, 145, 115],
  ])("after %d s: winding %d °C, housing %d °C", (seconds, winding, housing) => {
    const now = advanceMotorHeat(heat, cold, 60, 25, seconds);
    expect(now.winding).toBeCloseTo(winding, 3);
    expect(now.housing).toBeCloseTo(housing, 3);
  });

  // Computed: the motor of the worked example above as one node, 25 W, 1.8 K/W, τ 600 s, from 35 °C.
  it.each([
    [60, 39.282],
    [300, 52.706],
    [600, 63.445],
    [1800, 77.76],
  ])("one node after %d s: %d °C", (seconds, celsius) => {
    const single = {
      windingToHousing: 1.8,
      housingToAmbient: 1e-9,
      windingCapacity: 600 / 1.8,
      housingCapacity: 1,
    };
    const now = advanceMotorHeat(single, { winding: 35, housing: 35 }, 25, 35, seconds);
    expect(now.winding).toBeCloseTo(celsius, 3);
  });
});
