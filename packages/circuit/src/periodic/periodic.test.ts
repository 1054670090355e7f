import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CircuitElement, periodicSteadyState, prepareTransient } from "../index";
import { prepareSolver } from "../prepare-circuit";
import { createIntegrator } from "../transient/integrator";
import type { TransientState } from "../transient/options";
import { run } from "../transient/run";
import { listFreeCharges } from "./free-charges";
import { solveDense } from "./linear-solve";
import { createSensitivity } from "./sensitivity";

const source: CircuitElement = {
  kind: "voltageSource",
  id: "v",
  positive: "a",
  negative: "0",
  volts: 13,
  ohms: 0.02,
};
const contact: CircuitElement = { kind: "switch", id: "s", a: "a", b: "m", closed: false };
const pulses = (hertz: number, duty: number) =>
  ({ element: "s", field: "closed", wave: { kind: "pulse", low: false, high: true, hertz, duty } }) as const;
const diode: CircuitElement = { kind: "diode", id: "d", anode: "0", cathode: "m" };
const motor: CircuitElement = {
  kind: "motor",
  id: "motor",
  plus: "m",
  minus: "0",
  ohms: 0.3,
  motorConstant: 0.03,
  inertia: 1e-3,
  coulombFriction: 0.02,
  loadPerSpeed: 1e-4,
};
const lamp: CircuitElement = { kind: "filament", id: "lamp", a: "m", b: "0", ratedVolts: 12, ratedWatts: 21 };
const coil: readonly CircuitElement[] = [
  { kind: "resistor", id: "r", a: "m", b: "n", ohms: 3 },
  { kind: "inductor", id: "l", a: "n", b: "0", henries: 0.03 },
];

const prepared = (elements: readonly CircuitElement[]) => {
  const solver = prepareSolver({ ground: "0", elements }, true);
  if (!solver.ok) throw new Error(solver.error.message);
  return { solver: solver.value, integrator: createIntegrator(solver.value) };
};

describe("sensitivities of a period", () => {
  it.each<[string, readonly CircuitElement[]]>([
    ["a coil with its diode", [...coil, diode]],
    ["a lamp", [lamp]],
    ["a motor with its diode", [motor, diode]],
  ])("are what a small change of the charges makes of the end: %s", (_, load) => {
    const { solver, integrator } = prepared([source, contact, ...load]);
    const options = { untilSeconds: 5e-3, drives: [pulses(200, 0.3)], relativeTolerance: 1e-6 };
    const follow = (from: TransientState | undefined, sensitivity?: ReturnType<typeof createSensitivity>) => {
      const start = from ? { continueFrom: { ...from, seconds: 0 } } : {};
      const result = run(solver, integrator, { ...options, ...start }, sensitivity);
      if (!result.ok) throw new Error(result.error.message);
      return result.value.end;
    };
    const base = follow(follow(undefined));
    const { slots } = listFreeCharges(solver.system, 1e-6, 1e-6, 1e4);
    expect(slots.length).toBeGreaterThan(0);
    const sensitivity = createSensitivity(solver.system, slots);
    sensitivity.reset();
    follow(base, sensitivity);
    const move = (column: number, sign: number) => {
      const charge = base.charge.slice();
      charge[slots[column]] += sign * 1e-3 * Math.max(Math.abs(charge[slots[column]]), 1e-3);
      return follow({ ...base, charge }).charge;
    };
    for (let column = 0; column < slots.length; column++) {
      const [up, down] = [move(column, 1), move(column, -1)];
      const width = 2e-3 * Math.max(Math.abs(base.charge[slots[column]]), 1e-3);
      const scale = Math.max(...Array.from(slots, (slot) => Math.abs(up[slot] - down[slot]) / width));
      for (let row = 0; row < slots.length; row++) {
        const measured = (up[slots[row]] - down[slots[row]]) / width;
        // The step in which the motor's diode ceases to conduct moves with the charge, which the chain rule leaves out.
        expect(Math.abs(sensitivity.at(row, column) - measured)).toBeLessThan(1e-2 * Math.max(scale, 1e-3));
      }
    }
  });
});

describe("charges that a steady state has to close", () => {
  it("are not those that an operating point holds", () => {
    const battery: CircuitElement = {
      kind: "battery",
      id: "b",
      positive: "a",
      negative: "0",
      capacityAmpereHours: 60,
    };
    const fuse: CircuitElement = { kind: "fuse", id: "f", type: "C", ratedAmps: 10, a: "a", b: "m" };
    const names = (elements: readonly CircuitElement[]) => {
      const { solver } = prepared(elements);
      solver.solve();
      const { rows } = listFreeCharges(solver.system, 1e-6, 1e-6, 1e4);
      const { law } = solver.system.tables;
      return Array.from(rows, (row) =>
        law.devices.flatMap((device) => {
          const k = device.unknowns.indexOf(row);
          return k < 0 ? [] : [device.law.internals[k].name];
        }),
      ).flat();
    };
    expect(names([battery, fuse, motor])).toEqual(["voltsPolarisation", "ampsArmature", "radiansPerSecond"]);
  });
});

describe("a steady state", () => {
  it("is where a long run ends up", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.double({ min: 50, max: 2000, noNaN: true }),
        fc.constantFrom<readonly CircuitElement[]>(
          [...coil, diode],
          [lamp],
          [
            diode,
            { kind: "resistor", id: "r", a: "m", b: "c", ohms: 10 },
            { kind: "capacitor", id: "c", a: "c", b: "0", farads: 1e-4 },
            { kind: "resistor", id: "load", a: "c", b: "0", ohms: 100 },
          ],
        ),
        (duty, hertz, load) => {
          const elements = [source, contact, ...load];
          const drives = [pulses(hertz, duty)];
          const steady = periodicSteadyState({ ground: "0", elements }, { hertz, drives });
          if (!steady.ok) throw new Error(steady.error.message);
          const circuit = prepareTransient({ ground: "0", elements });
          if (!circuit.ok) throw new Error(circuit.error.message);
          // Some 20 time constants of the coil and the capacitor, and of a warm lamp.
          const periods = Math.ceil(0.4 * hertz);
          const long = circuit.value.run({ untilSeconds: periods / hertz, drives, maxSteps: 1_000_000 });
          if (!long.ok) throw new Error(long.error.message);
          const { end } = long.value;
          const last = circuit.value.run({
            untilSeconds: end.seconds + 1 / hertz,
            continueFrom: end,
            drives,
          });
          if (!last.ok) throw new Error(last.error.message);
          for (const signal of [{ amps: "s" }, { plus: "m" }]) {
            const [own, other] = [steady.value.measure(signal), last.value.measure(signal)];
            expect(Math.abs(own.average - other.average)).toBeLessThan(2e-3 * other.rms);
            expect(Math.abs(own.rms - other.rms)).toBeLessThan(2e-3 * other.rms);
          }
        },
      ),
      { numRuns: 12 },
    );
  }, 30_000);

  it("wants a period", () => {
    const options = { drives: [pulses(200, 0.5)] };
    expect(periodicSteadyState({ ground: "0", elements: [source, contact, lamp] }, options)).toMatchObject({
      ok: false,
      error: { code: "invalid_option", field: "periodSeconds" },
    });
  });

  it("shows whichever period is asked for", () => {
    const elements = [source, contact, ...coil, diode];
    const at = (fromSeconds: number) => {
      const result = periodicSteadyState(
        { ground: "0", elements },
        { hertz: 200, drives: [pulses(200, 0.3)], fromSeconds },
      );
      if (!result.ok) throw new Error(result.error.message);
      return result.value.measure({ amps: "l" });
    };
    expect(at(1.002).average).toBeCloseTo(at(0).average, 3);
    expect(at(1.002).max).toBeCloseTo(at(0).max, 3);
  });
});

describe("solveDense", () => {
  it("solves what has a solution and says when there is none", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (numbers) => {
          const matrix = Float64Array.from(numbers.slice(0, 9), (x, i) => x + (i % 4 === 0 ? 4 : 0));
          const solution = numbers.slice(9);
          const rightSide = Float64Array.from([0, 1, 2], (row) =>
            solution.reduce((sum, x, column) => sum + matrix[3 * row + column] * x, 0),
          );
          expect(solveDense(matrix, rightSide)).toBe(true);
          for (const [i, x] of solution.entries()) expect(rightSide[i]).toBeCloseTo(x, 10);
        },
      ),
    );
    expect(solveDense(Float64Array.of(1, 2, 2, 4), Float64Array.of(1, 1))).toBe(false);
    expect(solveDense(Float64Array.of(0, 1, 1, 0), Float64Array.of(2, 3))).toBe(true);
  });
});
