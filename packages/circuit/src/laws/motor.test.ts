import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type HeatedMotorParameters, heatedMotorLaw, motorLaw } from "./motor";
import { evaluateLaw, worstSlope } from "./one-port-bench";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const motors = fc.record<HeatedMotorParameters>({
  ohms: between(0.01, 10),
  henries: between(1e-5, 1e-2),
  motorConstant: between(0.005, 0.5),
  inertia: between(1e-6, 1e-2),
  viscousFriction: between(0, 1e-3),
  dryTorque: between(0.05, 0.3),
  coulombFriction: between(0, 0.05),
  loadPerSpeed: between(0, 1e-3),
  loadPerSpeedSquared: between(0, 1e-5),
  shaftTorque: fc.constant(0),
  locked: fc.boolean(),
  brushVolts: between(0, 1),
  celsius: between(-40, 150),
  startAmps: fc.constant(0),
  startRadiansPerSecond: fc.constant(0),
  windingToHousing: between(0.1, 3),
  housingToAmbient: between(0.1, 3),
  windingCapacity: between(10, 200),
  housingCapacity: between(100, 2000),
  housingCelsius: between(-40, 100),
  ambientCelsius: between(-40, 60),
  heatInBalance: fc.boolean(),
});
const points = fc
  .tuple(between(-20, 20), between(-100, 100), between(-500, 500), between(-300, 300), between(-50, 150))
  .map((x) => Float64Array.from(x));

describe("motor law", () => {
  it.each([
    ["in time", false],
    ["at rest", true],
  ])("states its derivatives %s", (_name, isStatic) => {
    fc.assert(
      fc.property(motors, points, (motor, x) => {
        const steps = [1e-4, 1e-4, 1e-4, 1e-3, 1e-3];
        expect(worstSlope(heatedMotorLaw, motor, x, steps, isStatic)).toBeLessThan(2e-5);
        expect(worstSlope(motorLaw, motor, x.slice(0, 3), steps, isStatic)).toBeLessThan(2e-5);
      }),
    );
  });

  it("turns every watt it takes into heat, stored energy or work on its load", () => {
    fc.assert(
      fc.property(motors, points, (motor, x) => {
        const { f, q, dq, size } = evaluateLaw(heatedMotorLaw, motor, x);
        const at = (values: Float64Array, k: number) => values[k] ?? Number.NaN;
        const [volts, amps, speed] = [at(x, 0), at(x, 1), motor.locked ? 0 : at(x, 2)];
        // With the rates that the law asks for, stored energy changes by i·dφ/dt + w·dp/dt.
        const stored = amps * -at(f, 1) + (motor.locked ? 0 : speed * -at(f, 2));
        const into = volts * at(f, 0);
        expect(at(q, 1)).toBeCloseTo(at(dq, size + 1) * amps, 12);
        const back = motor.locked ? motor.motorConstant * at(x, 2) * amps : 0;
        const spent = into - stored - back;
        expect(spent).toBeGreaterThanOrEqual(-1e-9 * (Math.abs(into) + Math.abs(stored) + Math.abs(back)));
        // What warms winding and housing is part of it, the work on the load is the rest.
        const outside = (at(x, 4) - motor.ambientCelsius) / motor.housingToAmbient;
        const heat = outside - at(f, 3) - at(f, 4);
        const load = motor.locked
          ? 0
          : motor.loadPerSpeed * speed ** 2 +
            motor.loadPerSpeedSquared * Math.abs(speed) ** 3 +
            (motor.dryTorque - motor.coulombFriction) * Math.tanh(speed / 0.1) * speed;
        const scale = 1 + Math.abs(into) + Math.abs(stored) + load + Math.abs(heat) + Math.abs(outside);
        const flow = Math.abs(at(x, 3) - at(x, 4)) / motor.windingToHousing;
        expect(Math.abs(spent - heat - load)).toBeLessThanOrEqual(1e-12 * (scale + flow + Math.abs(back)));
      }),
    );
  });
});
