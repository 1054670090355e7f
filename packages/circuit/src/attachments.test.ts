import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Attachable } from "./attachable";
import type { Circuit, OperatingPoint } from "./circuit";
import type { CircuitElement, Network } from "./network";
import { operatingPoint, prepareCircuit } from "./prepare-circuit";

const prepared = (network: Network): Circuit => {
  const circuit = prepareCircuit(network);
  if (!circuit.ok) throw new Error(circuit.error.message);
  return circuit.value;
};
const solved = (circuit: Circuit): OperatingPoint => {
  const point = circuit.operatingPoint();
  if (!point.ok) throw new Error(point.error.message);
  return point.value;
};

const ohms = fc.double({ min: -3, max: 7, noNaN: true }).map((decade) => 10 ** decade);
const name = (i: number) => (i === 0 ? "ground" : `n${i}`);

/** A battery, a tree and some chords of resistances, diodes here and there; the last node may float. */
const networks = fc
  .record({
    rows: fc.array(fc.tuple(fc.nat(), ohms, fc.nat(), fc.boolean()), { minLength: 3, maxLength: 10 }),
    floats: fc.boolean(),
  })
  .map(({ rows, floats }): Network => {
    const elements: CircuitElement[] = [
      { kind: "voltageSource", id: "battery", positive: "n1", negative: "ground", volts: 12.6, ohms: 0.01 },
    ];
    rows.forEach(([parent, value, other, isDiode], k) => {
      const node = name(k + 2);
      elements.push({ kind: "resistor", id: `r${k}`, a: name((parent % (k + 1)) + 1), b: node, ohms: value });
      if (isDiode) elements.push({ kind: "diode", id: `d${k}`, anode: node, cathode: name(other % (k + 2)) });
      else
        elements.push({ kind: "resistor", id: `c${k}`, a: node, b: name(other % (k + 2)), ohms: value * 7 });
    });
    if (floats) elements.push({ kind: "resistor", id: "loose", a: "loose1", b: "loose2", ohms: 5 });
    return { ground: "ground", elements };
  });

const instruments = fc.constantFrom("voltmeter", "ammeter", "lamp", "ohmmeter", "diodeTest", "injection");

function instrument(kind: string, id: string, a: string, b: string): Attachable {
  if (kind === "lamp") return { kind: "filament", id, a, b, ratedVolts: 12, ratedWatts: 3 };
  if (kind === "ohmmeter")
    return { kind: "voltageSource", id, positive: a, negative: b, volts: 0.4, ohms: 1000 };
  if (kind === "diodeTest") return { kind: "diode", id, anode: a, cathode: b };
  if (kind === "injection") return { kind: "currentSource", id, from: a, to: b, amps: 1e-4 };
  return { kind: "resistor", id, a, b, ohms: kind === "ammeter" ? 0.01 : 1e7 };
}

// 0.1 µV and 0.1 µA: only the leak of 1e-12 S says where an island of its own stands.
const near = (ours: number, theirs: number) =>
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-7 * Math.abs(theirs) + 1e-7);

describe("an attached element", () => {
  it("gives what preparing the network with it gives, and leaves no trace when taken away", () => {
    fc.assert(
      fc.property(
        networks,
        fc.array(fc.tuple(instruments, fc.nat(), fc.nat()), { minLength: 1, maxLength: 3 }),
        (network, leads) => {
          const circuit = prepared(network);
          const before = solved(circuit);
          const placed = leads.map(([kind, i, j], k) => {
            const [a, b] = [circuit.nodes[i % circuit.nodes.length], circuit.nodes[j % circuit.nodes.length]];
            return instrument(kind, `extra${k}`, a, b);
          });
          for (const element of placed) expect(circuit.attach(element)).toEqual({ ok: true });
          const whole = operatingPoint({ ...network, elements: [...network.elements, ...placed] });
          const quick = circuit.operatingPoint();
          if (whole.ok && quick.ok) {
            for (const node of circuit.nodes) near(quick.value.volts(node), whole.value.volts(node));
            for (const { id } of [...network.elements, ...placed])
              near(quick.value.amps(id), whole.value.amps(id));
            expect(quick.value.floatingNodes).toEqual(whole.value.floatingNodes);
          } else
            expect(quick.ok ? undefined : quick.error.code).toBe(whole.ok ? undefined : whole.error.code);

          for (const { id } of placed) expect(circuit.detach(id).ok).toBe(true);
          const after = solved(circuit);
          for (const node of circuit.nodes) near(after.volts(node), before.volts(node));
        },
      ),
      { numRuns: 150 },
    );
  });

  const divider: Network = {
    ground: "0",
    elements: [
      { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 6 },
      { kind: "resistor", id: "top", a: "a", b: "m", ohms: 1000 },
      { kind: "resistor", id: "bottom", a: "m", b: "0", ohms: 2000 },
    ],
  };

  it("can be changed while it is attached", () => {
    const circuit = prepared(divider);
    circuit.attach({ kind: "resistor", id: "meter", a: "m", b: "0", ohms: 1e6 });
    // Divider under load: 6 V · (2k ∥ R)/(1k + 2k ∥ R).
    expect(solved(circuit).volts("m")).toBeCloseTo(3.997335, 6);
    circuit.set("meter", { ohms: 10_000 });
    const point = solved(circuit);
    expect(point.volts("m")).toBeCloseTo(3.75, 9);
    expect(point.amps("meter")).toBeCloseTo(375e-6, 12);
    circuit.detach("meter");
    expect(solved(circuit).volts("m")).toBeCloseTo(4, 9);
    expect(point.amps("meter")).toBeCloseTo(375e-6, 12);
  });

  it("has the resistance of its temperature", () => {
    const circuit = prepared(divider);
    const wire = { kind: "resistor", id: "wire", a: "m", b: "0", ohms: 1000 } as const;
    circuit.attach({ ...wire, celsius: 120, temperatureCoefficient: 0.01 });
    // Doubled at 100 K above 20 °C: 6 V · (2k ∥ 2k)/(1k + 2k ∥ 2k).
    expect(solved(circuit).volts("m")).toBeCloseTo(3, 9);
    circuit.set("wire", { celsius: 20 });
    expect(solved(circuit).volts("m")).toBeCloseTo(6 * (2 / 5), 9);
  });

  it("is refused with the reason", () => {
    const circuit = prepared(divider);
    const refused = (element: Attachable) => {
      const result = circuit.attach(element);
      return result.ok ? undefined : result.error;
    };
    const meter: Attachable = { kind: "resistor", id: "meter", a: "m", b: "0", ohms: 1e6 };
    expect(refused({ ...meter, b: "nowhere" })).toMatchObject({ code: "unknown_node", node: "nowhere" });
    expect(refused({ ...meter, ohms: 0 })).toMatchObject({ code: "invalid_element", field: "ohms" });
    expect(refused({ ...meter, id: "top" })).toMatchObject({ code: "duplicate_id", element: "top" });
    const source: Attachable = { kind: "voltageSource", id: "s", positive: "m", negative: "0", volts: 1 };
    expect(refused(source)).toMatchObject({ code: "invalid_element", field: "ohms" });
    expect(circuit.detach("meter")).toMatchObject({ ok: false, error: { code: "unknown_element" } });
    for (let i = 0; i < 16; i++) expect(refused({ ...meter, id: `meter${i}` })).toBeUndefined();
    expect(refused(meter)).toMatchObject({ code: "invalid_element", element: "meter" });
  });
});

describe("thevenin", () => {
  it("predicts what a small load does, and matches the same source in the network's place", () => {
    fc.assert(
      fc.property(networks, fc.nat(), fc.nat(), (network, i, j) => {
        const circuit = prepared(network);
        const [a, b] = [circuit.nodes[i % circuit.nodes.length], circuit.nodes[j % circuit.nodes.length]];
        const found = circuit.thevenin(a, b);
        if (!found.ok) throw new Error(found.error.message);
        const { openVolts, ohms: source } = found.value;
        const point = solved(circuit);
        near(openVolts, point.volts(a) - point.volts(b));
        const isLoose = (node: string) => node.startsWith("loose");
        if (a === b) expect(source).toBe(0);
        if (isLoose(a) !== isLoose(b)) expect(source).toBe(Number.POSITIVE_INFINITY);
        if (a === b || isLoose(a) !== isLoose(b)) return;
        expect(source).toBeGreaterThan(0);
        // A current that moves the pair by a microvolt meets the slope at the operating point.
        const amps = 1e-6 / source;
        circuit.attach({ kind: "currentSource", id: "push", from: b, to: a, amps });
        const moved = solved(circuit);
        const rise = moved.volts(a) - moved.volts(b) - openVolts;
        expect(rise / 1e-6).toBeCloseTo(1, 3);
      }),
      { numRuns: 150 },
    );
  });

  it("is the parallel resistance of a divider", () => {
    const found = prepared({
      ground: "0",
      elements: [
        { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 6 },
        { kind: "resistor", id: "top", a: "a", b: "m", ohms: 1000 },
        { kind: "resistor", id: "bottom", a: "m", b: "0", ohms: 2000 },
      ],
    }).thevenin("m", "0");
    // Closed form: 1 kΩ ∥ 2 kΩ.
    expect(found.ok && found.value.ohms).toBeCloseTo(2000 / 3, 9);
    expect(found.ok && found.value.openVolts).toBeCloseTo(4, 12);
  });
});
