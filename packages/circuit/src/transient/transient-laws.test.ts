import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CircuitElement,
  prepareTransient,
  type Transient,
  type TransientOptions,
  transient,
} from "../index";

// fast-check prints seed and path of a failing run; give them as { seed, path } to fc.assert to repeat it.

const followed = (elements: readonly CircuitElement[], options: TransientOptions): Transient => {
  const result = transient({ ground: "0", elements }, options);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

const decades = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((decade) => 10 ** decade);

const node = (i: number) => (i === 0 ? "0" : `n${i}`);

/** A tree of resistors from a pulsed source with capacitors, coils in series with resistors, and diodes strewn in. */
const networks = fc
  .array(
    fc.record({
      parent: fc.nat(),
      other: fc.nat(),
      ohms: decades(0, 4),
      extra: fc.constantFrom("none", "capacitor", "capacitor", "inductor", "diode"),
      farads: decades(-8, -5),
      henries: decades(-4, -1),
    }),
    { minLength: 2, maxLength: 7 },
  )
  .map((rows) => {
    const elements: CircuitElement[] = [
      { kind: "voltageSource", id: "v", positive: "n1", negative: "0", volts: 0, ohms: 1 },
    ];
    for (const [k, row] of rows.entries()) {
      const own = node(k + 2);
      elements.push({
        kind: "resistor",
        id: `t${k}`,
        a: node(1 + (row.parent % (k + 1))),
        b: own,
        ohms: row.ohms,
      });
      const other = node(row.other % (k + 2));
      const id = `x${k}`;
      if (row.extra === "capacitor")
        elements.push({ kind: "capacitor", id, a: own, b: other, farads: row.farads });
      if (row.extra === "diode") elements.push({ kind: "diode", id, anode: own, cathode: other });
      if (row.extra === "inductor") {
        elements.push(
          { kind: "inductor", id, a: own, b: `${own}i`, henries: row.henries },
          { kind: "resistor", id: `${id}r`, a: `${own}i`, b: other, ohms: 10 },
        );
      }
    }
    return elements;
  });

const drive = {
  element: "v",
  field: "volts",
  wave: { kind: "pulse", low: -2, high: 12, hertz: 500, duty: 0.4, delaySeconds: 1e-4 },
} as const;
const stretch = { untilSeconds: 3e-3, start: "rest", drives: [drive] } as const;

const energyOf = (run: Transient, elements: readonly CircuitElement[], last: number): number =>
  elements.reduce((sum, element) => {
    if (element.kind === "capacitor") {
      const volts = (run.volts(element.a)[last] ?? 0) - (run.volts(element.b)[last] ?? 0);
      return sum + (element.farads * volts ** 2) / 2;
    }
    return element.kind === "inductor"
      ? sum + (element.henries * (run.amps(element.id)[last] ?? 0) ** 2) / 2
      : sum;
  }, 0);

/** Joules into elements of two terminals, by Gauss's rule between neighbouring samples (5 points, Abramowitz 25.4.30). */
function joulesInto(run: Transient, pairs: readonly (readonly [id: string, a: string, b: string])[]): number {
  const points = [-0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664];
  const weights = [
    0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189,
  ];
  const { seconds } = run;
  const times: number[] = [];
  const parts: number[] = [];
  for (let i = 1; i < seconds.length; i++) {
    const half = (seconds[i] - seconds[i - 1]) / 2;
    if (half === 0) continue;
    for (const [k, p] of points.entries()) {
      times.push(seconds[i - 1] + half * (1 + p));
      parts.push(weights[k] * half);
    }
  }
  const samples = run.samplesAt(times);
  return pairs.reduce((total, [id, a, b]) => {
    const [va, vb, amps] = [samples.volts(a), samples.volts(b), samples.amps(id)];
    return total + parts.reduce((sum, part, i) => sum + part * (va[i] - vb[i]) * amps[i], 0);
  }, 0);
}

describe("laws of a transient", () => {
  it("what the source gives is burnt or stored", () => {
    fc.assert(
      fc.property(networks, (elements) => {
        const run = followed(elements, { ...stretch, relativeTolerance: 1e-5 });
        const given = -joulesInto(run, [["v", "n1", "0"]]);
        const burnt = joulesInto(
          run,
          elements.flatMap((e): [string, string, string][] => {
            if (e.kind === "resistor") return [[e.id, e.a, e.b]];
            return e.kind === "diode" ? [[e.id, e.anode, e.cathode]] : [];
          }),
        );
        const last = run.seconds.length - 1;
        const stored = energyOf(run, elements, last) - energyOf(run, elements, 0);
        const turnover = Math.abs(given) + burnt + Math.abs(stored);
        expect(Math.abs(given - burnt - stored)).toBeLessThan(2e-3 * turnover + 1e-12);
        expect(burnt).toBeGreaterThanOrEqual(-1e-12);
      }),
      { numRuns: 60 },
    );
  });

  it("what flows into a capacitor is the change of its charge", () => {
    fc.assert(
      fc.property(networks, (elements) => {
        const run = followed(elements, { ...stretch, relativeTolerance: 1e-5 });
        for (const element of elements) {
          if (element.kind !== "capacitor") continue;
          const { average } = run.measure({ amps: element.id });
          const [va, vb] = [run.volts(element.a), run.volts(element.b)];
          const change = element.farads * ((va.at(-1) ?? 0) - (vb.at(-1) ?? 0));
          const size = run.measure({ amps: element.id }).rms * stretch.untilSeconds;
          expect(Math.abs(average * stretch.untilSeconds - change)).toBeLessThan(2e-3 * size + 1e-14);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("a tighter tolerance is nearer to the tightest", () => {
    fc.assert(
      fc.property(networks, (elements) => {
        const at = [0.5e-3, 0.9e-3, 1.3e-3, 2.5e-3];
        const volts = [1e-3, 1e-4, 1e-5, 1e-8].map((relativeTolerance) => {
          const floors = { voltTolerance: relativeTolerance / 100, ampTolerance: relativeTolerance / 100 };
          const run = followed(elements, { ...stretch, ...floors, relativeTolerance, at });
          return elements.flatMap((e) => (e.kind === "capacitor" ? [...run.volts(e.a)] : []));
        });
        const far = volts.map((own) =>
          own.reduce((most, v, i) => Math.max(most, Math.abs(v - volts[3][i])), 0),
        );
        for (const [i, tolerance] of [1e-3, 1e-4, 1e-5].entries())
          expect(far[i]).toBeLessThan(300 * tolerance);
      }),
      { numRuns: 12 },
    );
  });

  it("does not depend on what the clock shows", () => {
    fc.assert(
      fc.property(networks, fc.double({ min: 0, max: 100, noNaN: true }), (elements, shift) => {
        const plain = followed(elements, stretch);
        const moved = followed(elements, {
          ...stretch,
          fromSeconds: shift,
          untilSeconds: shift + stretch.untilSeconds,
          drives: [{ ...drive, wave: { ...drive.wave, delaySeconds: drive.wave.delaySeconds + shift } }],
        });
        for (const name of elements.flatMap((e) => (e.kind === "capacitor" ? [e.a] : [])))
          expect(moved.volts(name).at(-1)).toBeCloseTo(plain.volts(name).at(-1) ?? Number.NaN, 4);
      }),
      { numRuns: 40 },
    );
  });

  it("goes on where it stopped", () => {
    fc.assert(
      fc.property(networks, fc.double({ min: 1e-4, max: 2.9e-3, noNaN: true }), (elements, cut) => {
        const whole = followed(elements, stretch);
        const circuit = prepareTransient({ ground: "0", elements });
        if (!circuit.ok) throw new Error(circuit.error.message);
        const first = circuit.value.run({ ...stretch, untilSeconds: cut });
        if (!first.ok) throw new Error(first.error.message);
        const second = circuit.value.run({ ...stretch, continueFrom: first.value.end });
        if (!second.ok) throw new Error(second.error.message);
        expect(second.value.seconds[0]).toBe(cut);
        for (const name of elements.flatMap((e) => (e.kind === "capacitor" ? [e.a] : [])))
          expect(
            Math.abs((second.value.volts(name).at(-1) ?? 0) - (whole.volts(name).at(-1) ?? 0)),
          ).toBeLessThan(5e-3);
      }),
      { numRuns: 40 },
    );
  });

  it("is the same however often it is repeated", () => {
    fc.assert(
      fc.property(networks, (elements) => {
        const circuit = prepareTransient({ ground: "0", elements });
        if (!circuit.ok) throw new Error(circuit.error.message);
        const options = { ...stretch, start: "operatingPoint" } as const;
        const runs = [circuit.value.run(options), circuit.value.run(options)].map((run) => {
          if (!run.ok) throw new Error(run.error.message);
          return [...run.value.seconds, ...run.value.volts("n2")];
        });
        expect(runs[1]).toEqual(runs[0]);
      }),
      { numRuns: 20 },
    );
  });
});
