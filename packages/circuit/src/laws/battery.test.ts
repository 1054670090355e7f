import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createOpenVoltsCurve, floodedOpenVolts } from "../physics/battery-charge";
import { type BatteryParameters, batteryLaw } from "./battery";
import { evaluateLaw, worstSlope } from "./one-port-bench";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const curve = createOpenVoltsCurve(floodedOpenVolts);

const batteries = fc.record<BatteryParameters>({
  curve: fc.constant(curve),
  cellShare: fc.constantFrom(5 / 6, 1, 2),
  voltsAbove: between(0, 0.2),
  kelvinAbove: between(-60, 40),
  ohms: between(1e-3, 0.1),
  polarisationOhms: between(0, 0.05),
  polarisationSeconds: between(0.5, 30),
  acceptanceScale: between(0.5, 5),
  capacityAmpereHours: between(10, 200),
  stateOfCharge: between(0, 1),
});
// Away from the ends of the curve and the corners of the charge efficiency, where the slope itself turns.
const charges = between(-0.4, 1.4).filter((s) => [0, 0.95, 1].every((corner) => Math.abs(s - corner) > 1e-5));

describe("battery law", () => {
  it.each([
    ["in time", false],
    ["at rest", true],
  ])("states its derivatives %s", (_name, isStatic) => {
    fc.assert(
      fc.property(
        batteries,
        between(5, 20),
        between(-300, 100),
        between(-2, 5),
        charges,
        (battery, v, i, p, s) => {
          fc.pre(Math.abs(i) > 1e-4);
          const x = Float64Array.of(v, i, p, s);
          expect(worstSlope(batteryLaw, battery, x, [1e-4, 1e-6, 1e-4, 1e-6], isStatic)).toBeLessThan(1e-4);
        },
      ),
    );
  });

  it("never gives back more than it holds: its resistances only take power", () => {
    fc.assert(
      fc.property(batteries, between(-300, 100), between(-0.5, 1.5), (battery, i, s) => {
        // Settled polarisation: its equation solved for p, then the terminal's for v.
        const settled = -(
          evaluateLaw(batteryLaw, battery, Float64Array.of(0, i, 0, s), true).f[2] ?? Number.NaN
        );
        const volts = (amps: number, p: number) =>
          evaluateLaw(batteryLaw, battery, Float64Array.of(0, amps, p, s), true).f[1] ?? Number.NaN;
        const lost = (volts(i, settled) - volts(0, 0)) * i;
        expect(lost).toBeGreaterThanOrEqual(-1e-12 * Math.abs(i));
      }),
    );
  });

  it("has open-circuit volts that rise with the charge, whatever the charge", () => {
    fc.assert(
      fc.property(batteries, between(-1, 2), between(1e-6, 1), (battery, s, more) => {
        const open = (charge: number) =>
          evaluateLaw(batteryLaw, battery, Float64Array.of(0, 0, 0, charge), true).f[1] ?? Number.NaN;
        expect(open(s + more)).toBeGreaterThan(open(s));
      }),
    );
  });

  it("counts the amps that go in, and gasses instead when full", () => {
    const battery: BatteryParameters = {
      curve,
      cellShare: 1,
      voltsAbove: 0,
      kelvinAbove: 0,
      ohms: 3e-3,
      polarisationOhms: 2e-3,
      polarisationSeconds: 5,
      acceptanceScale: 1,
      capacityAmpereHours: 60,
      stateOfCharge: 0.5,
    };
    const perHour = (amps: number, charge: number) => {
      const { f, dq } = evaluateLaw(batteryLaw, battery, Float64Array.of(12, amps, 0, charge));
      return (-3600 * (f[3] ?? Number.NaN)) / (dq[15] ?? Number.NaN);
    };
    expect(perHour(-6, 0.5)).toBeCloseTo(-0.1, 12);
    expect(perHour(6, 0.5)).toBeCloseTo(0.1, 12);
    expect(perHour(6, 1)).toBeCloseTo(0, 12);
    expect(perHour(-6, 1)).toBeCloseTo(-0.1, 12);
  });
});
