import { grade } from "@probeworthy/evaluation/server";
import { afterAll, expect, it, vi } from "vitest";
import { contextWith, open, scenarioNamed, step, work } from "../../support/attempt-bench";

/** Relative error put on every simulated voltage and current: far above what two JavaScript engines may differ by. */
const noise = vi.hoisted(() => ({ relative: 0 }));

vi.mock("@probeworthy/vehicle", async (original) => {
  const vehicle = await original<typeof import("@probeworthy/vehicle")>();
  return {
    ...vehicle,
    settle: (...question: Parameters<typeof vehicle.settle>) => {
      const settled = vehicle.settle(...question);
      if (!settled.ok || noise.relative === 0) return settled;
      const { volts, amps } = settled.value;
      return vehicle.ok({
        ...settled.value,
        volts: (point: string) => volts(point) * (1 + noise.relative),
        amps: (id: string) => amps(id) * (1 - noise.relative),
      });
    },
  };
});

afterAll(() => {
  noise.relative = 0;
});

it("a last bit that differs between machines changes neither a reading nor a grade", () => {
  const context = contextWith(scenarioNamed("heavy-all-at-once"), [{ kind: "open", at: "X10.1" }]);
  const session = () =>
    work(
      open(context),
      step.set({ key: "on", engineSpeed: 850 }),
      step.set({ steeringEffort: 4 }),
      step.codes("A1"),
      ...step.read("G1:+", "G1:-"),
      ...step.redTo("F2:2"),
      ...step.redTo("X10.1:h"),
      { type: "selectFunction", function: "amps" },
      { type: "takeReading" },
      step.submit({ place: "X10.1" }),
    );
  const logs: string[] = [];
  const grades: string[] = [];
  for (const relative of [0, 1e-12]) {
    noise.relative = relative;
    const { events } = session();
    logs.push(JSON.stringify(events.map(({ observation }) => observation)));
    const result = grade(context, events);
    grades.push(JSON.stringify(result));
    expect(result.ok).toBe(true);
  }
  expect(logs[1]).toBe(logs[0]);
  expect(grades[1]).toBe(grades[0]);
});

it("the noise is really put on", async () => {
  const { prepareVehicle, settle, startState } = await import("@probeworthy/vehicle");
  const { trainingVehicle } = await import("@probeworthy/training-vehicle");
  const vehicle = prepareVehicle(trainingVehicle);
  if (!vehicle.ok) throw new Error("no vehicle");
  const state = startState(vehicle.value);
  if (!state.ok) throw new Error("no state");
  const volts = () => {
    const settled = settle(vehicle.value, state.value);
    return settled.ok ? settled.value.volts("G1:+") : Number.NaN;
  };
  noise.relative = 0;
  const clean = volts();
  noise.relative = 1e-12;
  expect(volts()).not.toBe(clean);
  expect(Math.abs(volts() / clean - 1)).toBeLessThan(1e-11);
});
