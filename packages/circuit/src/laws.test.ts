import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CircuitElement, type Network, type OperatingPoint, operatingPoint } from "./index";

// fast-check prints seed and path of a failing run; give them as { seed, path } to fc.assert to repeat it.

const solved = (network: Network): OperatingPoint => {
  const result = operatingPoint(network);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

const logOhms = (low: number, high: number) =>
  fc.double({ min: low, max: high, noNaN: true }).map((decade) => 10 ** decade);

const name = (i: number) => (i === 0 ? "ground" : `n${i}`);

/** A connected network of resistors: a tree from the ground plus chords, 1 mΩ to 30 MΩ. */
const resistors = fc
  .array(fc.tuple(fc.nat(), logOhms(-3, 7.4), fc.nat(), fc.option(logOhms(-3, 7.4))), {
    minLength: 3,
    maxLength: 14,
  })
  .map((rows): CircuitElement[] =>
    rows.flatMap(([parent, ohms, other, chord], k): CircuitElement[] => {
      const node = k + 1;
      const tree: CircuitElement = {
        kind: "resistor",
        id: `t${k}`,
        a: name(node),
        b: name(parent % node),
        ohms,
      };
      if (chord === null) return [tree];
      return [tree, { kind: "resistor", id: `c${k}`, a: name(node), b: name(other % node), ohms: chord }];
    }),
  );

/** The same with diodes, filaments, switches and zeners strewn in. */
const passives = fc
  .tuple(
    resistors,
    fc.array(
      fc.tuple(fc.constantFrom("diode", "zener", "filament", "switch"), fc.nat(), fc.nat(), fc.boolean()),
      {
        maxLength: 8,
      },
    ),
  )
  .map(([base, extras]): CircuitElement[] => {
    const nodes = countNodes(base);
    return [
      ...base,
      ...extras.map(([kind, i, j, flag], k): CircuitElement => {
        const [a, b] = [name(i % nodes), name(j % nodes)];
        if (kind === "filament")
          return { kind, id: `x${k}`, a, b, ratedVolts: 12, ratedWatts: flag ? 21 : 5 };
        if (kind === "switch") return { kind, id: `x${k}`, a, b, closed: flag };
        const zener = kind === "zener" ? { breakdownVolts: 6.2 } : {};
        return {
          kind: "diode",
          id: `x${k}`,
          anode: a,
          cathode: b,
          ...zener,
          ...(flag ? { seriesOhms: 0.5 } : {}),
        };
      }),
    ];
  });

const countNodes = (elements: readonly CircuitElement[]) =>
  1 + elements.filter((e) => e.id.startsWith("t")).length;

const supply = (volts: number, node = "n1"): CircuitElement => ({
  kind: "voltageSource",
  id: "supply",
  positive: node,
  negative: "ground",
  volts,
  ohms: 0.01,
});

const close = (a: number, b: number, relative = 1e-9, absolute = 1e-12) =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(relative * Math.max(Math.abs(a), Math.abs(b)) + absolute);

/** Amps into a node from all two-terminal elements, from their reported currents alone. */
function kirchhoff(elements: readonly CircuitElement[], point: OperatingPoint, node: string) {
  let sum = 0;
  let size = 0;
  for (const element of elements) {
    const [first, second] =
      element.kind === "diode"
        ? [element.anode, element.cathode]
        : element.kind === "voltageSource"
          ? [element.positive, element.negative]
          : element.kind === "currentSource"
            ? [element.from, element.to]
            : "a" in element
              ? [element.a, element.b]
              : [];
    const amps = point.amps(element.id);
    if (first === node) sum += amps;
    if (second === node) sum -= amps;
    if ((first === node) !== (second === node)) size += Math.abs(amps);
  }
  return { sum, size };
}

describe("laws of every network", () => {
  it("obeys Kirchhoff's current law at every node, by the reported currents", () => {
    fc.assert(
      fc.property(passives, fc.double({ min: -30, max: 30, noNaN: true }), (elements, volts) => {
        const all = [...elements, supply(volts)];
        const point = solved({ ground: "ground", elements: all });
        for (let i = 1; i < countNodes(elements); i++) {
          const { sum, size } = kirchhoff(all, point, name(i));
          expect(Math.abs(sum)).toBeLessThanOrEqual(2e-9 * size + 1e-14);
        }
      }),
    );
  });

  it("never makes power in passive elements", () => {
    fc.assert(
      fc.property(passives, fc.double({ min: -30, max: 30, noNaN: true }), (elements, volts) => {
        const point = solved({ ground: "ground", elements: [...elements, supply(volts)] });
        for (const element of elements) {
          const [from, to] =
            element.kind === "diode"
              ? [element.anode, element.cathode]
              : "a" in element
                ? [element.a, element.b]
                : [];
          if (from === undefined || to === undefined) throw new Error(`${element.id} has no two terminals`);
          const across = point.volts(from) - point.volts(to);
          // Between two rounded node voltages the sign of a microvolt drop may be lost: 8 ulp of the supply.
          const slack = 8 * Number.EPSILON * 30 * Math.abs(point.amps(element.id));
          expect(across * point.amps(element.id)).toBeGreaterThanOrEqual(-slack);
        }
      }),
    );
  });

  it("gives the same answer whatever the order and the names", () => {
    fc.assert(
      fc.property(passives, fc.array(fc.nat(), { minLength: 40, maxLength: 40 }), (elements, keys) => {
        const all = [...elements, supply(12.6)];
        const plain = solved({ ground: "ground", elements: all });
        const shuffled = all
          .map((element, i) => ({ element, key: keys[i % keys.length] }))
          .sort((p, q) => p.key - q.key)
          .map(({ element }) => element);
        const renamed = JSON.parse(
          JSON.stringify(shuffled).replaceAll(/"n(\d)/g, '"z9_$1'),
        ) as CircuitElement[];
        const other = solved({ ground: "ground", elements: renamed });
        for (let i = 1; i < countNodes(elements); i++) close(plain.volts(`n${i}`), other.volts(`z9_${i}`));
      }),
    );
  });

  it("does not change when a node is split by 0.1 µΩ", () => {
    fc.assert(
      fc.property(passives, fc.nat(), (elements, pick) => {
        const all = [...elements, supply(12.6)];
        const node = name(1 + (pick % (countNodes(elements) - 1)));
        let moved = 0;
        const split = all.map((element): CircuitElement => {
          if (!("a" in element) || element.a !== node) return element;
          moved++;
          return { ...element, a: "split" };
        });
        const bridge: CircuitElement = { kind: "resistor", id: "bridge", a: node, b: "split", ohms: 1e-7 };
        const before = solved({ ground: "ground", elements: all });
        const after = solved({ ground: "ground", elements: [...split, bridge] });
        for (let i = 1; i < countNodes(elements); i++) {
          // A bolted short beside the supply moves by the bridge itself: 0.1 µΩ against 10 mΩ is 1e-5.
          close(before.volts(name(i)), after.volts(name(i)), 5e-4, 1e-9);
        }
        if (moved > 0) close(after.volts(node), after.volts("split"), 1e-3, 2e-4);
      }),
    );
  });
});

describe("laws of linear networks", () => {
  const linear = (elements: readonly CircuitElement[], amps: readonly [number, number]) =>
    solved({
      ground: "ground",
      elements: [
        ...elements,
        { kind: "currentSource", id: "i1", from: "ground", to: "n1", amps: amps[0] },
        { kind: "currentSource", id: "i2", from: "ground", to: "n2", amps: amps[1] },
      ],
    });

  it("superposes", () => {
    fc.assert(
      fc.property(resistors, (elements) => {
        const both = linear(elements, [0.7, -0.3]);
        const first = linear(elements, [0.7, 0]);
        const second = linear(elements, [0, -0.3]);
        for (let i = 1; i < countNodes(elements); i++) {
          const [p, q] = [first.volts(name(i)), second.volts(name(i))];
          const slack = 1e-9 * (Math.abs(p) + Math.abs(q)) + 1e-12;
          expect(Math.abs(both.volts(name(i)) - p - q)).toBeLessThanOrEqual(slack);
        }
      }),
    );
  });

  it("is reciprocal: amps at one node raise another as much as the other way round", () => {
    fc.assert(
      fc.property(resistors, (elements) => {
        close(linear(elements, [1, 0]).volts("n2"), linear(elements, [0, 1]).volts("n1"));
      }),
    );
  });
});
