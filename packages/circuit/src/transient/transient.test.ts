import { describe, expect, it } from "vitest";
import { type CircuitElement, prepareTransient, type TransientOptions, transient } from "../index";

const source = (volts: number): CircuitElement => ({
  kind: "voltageSource",
  id: "v",
  positive: "a",
  negative: "0",
  volts,
});
const R = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});
const capacitor: CircuitElement = { kind: "capacitor", id: "c", a: "c", b: "0", farads: 1e-6 };
const rc = [source(5), R("r", "a", "c", 1000), capacitor];
const step = (times: readonly number[], values: readonly number[]) =>
  ({ element: "v", field: "volts", wave: { kind: "steps", times, values } }) as const;

const run = (elements: readonly CircuitElement[], options: TransientOptions) => {
  const result = transient({ ground: "0", elements }, options);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const failure = (elements: readonly CircuitElement[], options: TransientOptions) => {
  const result = transient({ ground: "0", elements }, options);
  if (result.ok) throw new Error("This was meant to fail.");
  return result.error;
};

describe("a run", () => {
  it("stays where it is when it starts from its operating point", () => {
    const { seconds, volts } = run(rc, { untilSeconds: 1 });
    for (const value of volts("c")) expect(value).toBeCloseTo(5, 9);
    expect(seconds[0]).toBe(0);
    expect(seconds.at(-1)).toBe(1);
  });

  it("lands on every corner and shows both sides of a jump", () => {
    const { seconds, volts } = run(rc, { untilSeconds: 1e-2, drives: [step([1e-3, 7e-3], [9, -3])] });
    for (const corner of [1e-3, 7e-3]) {
      const at = seconds.indexOf(corner);
      expect(seconds[at + 1]).toBe(corner);
      expect(volts("a")[at + 1]).not.toBeCloseTo(volts("a")[at], 1);
      expect(volts("c")[at + 1]).toBeCloseTo(volts("c")[at], 4);
    }
  });

  it("answers at the times asked for, and only for what was recorded", () => {
    const record = { volts: ["c"] };
    const got = run(rc, { untilSeconds: 1e-2, start: "rest", at: [0, 1e-3, 1e-2], record });
    expect([...got.seconds]).toEqual([0, 1e-3, 1e-2]);
    expect(got.volts("c")[1]).toBeCloseTo(5 * (1 - Math.exp(-1)), 3);
    expect(() => got.volts("a")).toThrow(/Not recorded/);
    expect(() => got.amps("r")).toThrow(/Not recorded/);
    expect(() => got.samplesAt([0.02])).toThrow(/0\.02 s was not recorded/);
  });

  it("takes changed numbers into the next run", () => {
    const circuit = prepareTransient({ ground: "0", elements: rc });
    if (!circuit.ok) throw new Error(circuit.error.message);
    const first = circuit.value.run({ untilSeconds: 1 });
    if (!first.ok) throw new Error(first.error.message);
    expect(circuit.value.set("v", { volts: 8 }).ok).toBe(true);
    const second = circuit.value.run({ untilSeconds: 2, continueFrom: first.value.end });
    if (!second.ok) throw new Error(second.error.message);
    expect(second.value.seconds[0]).toBe(1);
    expect(second.value.volts("c")[0]).toBeCloseTo(5, 4);
    expect(second.value.volts("a")[0]).toBe(8);
    expect(second.value.volts("c").at(-1)).toBeCloseTo(8, 6);
  });

  it("measures means and crossings of what it has followed", () => {
    const sine = {
      element: "v",
      field: "volts",
      wave: { kind: "sine", offset: 1, amplitude: 2, hertz: 50 },
    } as const;
    const got = run([source(0), R("r", "a", "0", 10)], { untilSeconds: 0.1, drives: [sine] });
    const { average, rms, acRms, min, max } = got.measure({ plus: "a" });
    expect(average).toBeCloseTo(1, 4);
    expect(acRms).toBeCloseTo(Math.SQRT2, 3);
    expect(rms).toBeCloseTo(Math.sqrt(3), 3);
    expect(min).toBeCloseTo(-1, 2);
    expect(max).toBeCloseTo(3, 2);
    const { duty, hertz, rises } = got.timing({ plus: "a" }, 2);
    expect(duty).toBeCloseTo(1 / 3, 3);
    expect(rises).toBe(5);
    expect(hertz).toBeCloseTo(50, 6);
    expect(got.measure({ amps: "r" }).average).toBeCloseTo(0.1, 5);
  });
});

describe("what goes wrong", () => {
  it.each<[string, TransientOptions, object]>([
    ["an end before the start", { untilSeconds: -1 }, { code: "invalid_option", field: "untilSeconds" }],
    ["an end that is no number", { untilSeconds: Number.NaN }, { code: "invalid_option" }],
    ["no tolerance", { untilSeconds: 1, relativeTolerance: 0 }, { field: "relativeTolerance" }],
    ["a time outside the run", { untilSeconds: 1, at: [2] }, { code: "invalid_option", field: "at" }],
    [
      "volts of what is no capacitor",
      { untilSeconds: 1, initialVolts: { r: 1 } },
      { code: "unknown_element", element: "r", field: "initialVolts" },
    ],
    [
      "a drive without element",
      { untilSeconds: 1, drives: [{ ...step([0], [1]), element: "x" }] },
      { code: "unknown_element", element: "x" },
    ],
    [
      "a drive without field",
      { untilSeconds: 1, drives: [{ ...step([0], [1]), field: "length" }] },
      { code: "invalid_element", element: "v", field: "length" },
    ],
    [
      "a value out of range on the way",
      {
        untilSeconds: 1,
        drives: [{ element: "r", field: "ohms", wave: { kind: "line", times: [0, 1], values: [1, -1] } }],
      },
      { code: "invalid_element", element: "r", field: "ohms" },
    ],
    [
      "a wave that turns back",
      { untilSeconds: 1, drives: [step([1, 0.5], [1, 2])] },
      { code: "invalid_option", element: "v", field: "volts" },
    ],
    ["a node that is not there", { untilSeconds: 1, record: { volts: ["z"] } }, { node: "z" }],
    [
      "a quantity that is not there",
      { untilSeconds: 1, record: { quantities: [{ element: "r", name: "celsius" }] } },
      { element: "r" },
    ],
  ])("refuses %s", (_, options, expected) => {
    expect(failure(rc, options)).toMatchObject(expected);
  });

  it("stops at the limit of steps and says where the work was", () => {
    const sine = { element: "v", field: "volts", wave: { kind: "sine", amplitude: 1, hertz: 1000 } } as const;
    const error = failure(rc, { untilSeconds: 1, drives: [sine], maxSteps: 100 });
    expect(error).toMatchObject({ code: "step_limit", node: "c" });
    expect(error.seconds).toBeGreaterThan(0);
  });

  it("stops where a step would have to be too short", () => {
    const error = failure(rc, { untilSeconds: 1, start: "rest", minStepSeconds: 0.01 });
    expect(error).toMatchObject({ code: "step_too_short", node: "c", seconds: 0 });
  });

  it("names what keeps changing its state without time going on", () => {
    const chatter: CircuitElement = {
      kind: "comparator",
      id: "k",
      a: "c",
      b: "0",
      positive: "c",
      negative: "0",
      thresholdVolts: 2,
    };
    const error = failure([source(5), R("r", "a", "c", 100), chatter], { untilSeconds: 1, start: "rest" });
    expect(error).toMatchObject({ code: "no_convergence", element: "k", seconds: 0 });
  });

  it("says when a current has lost its way", () => {
    const elements: CircuitElement[] = [
      { kind: "currentSource", id: "i", from: "0", to: "a", amps: 1e-3 },
      { kind: "switch", id: "s", a: "a", b: "0", closed: true },
    ];
    const open = {
      element: "s",
      field: "closed",
      wave: { kind: "steps", times: [0.5], values: [false] },
    } as const;
    expect(failure(elements, { untilSeconds: 1, drives: [open] })).toMatchObject({
      code: "open_current_source",
      element: "i",
      seconds: 0.5,
    });
  });
});
