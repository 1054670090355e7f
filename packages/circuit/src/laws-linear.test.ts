import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CircuitElement, NodeName } from "./network";
import { kinds, terminalFields } from "./sample-elements";
import { ground, networks } from "./testing/arbitrary-network";
import { decades } from "./testing/arbitrary-numbers";
import { assertLaw } from "./testing/assert-law";
import { close, pointOf, prepared, requireValue, solved } from "./testing/solved";

const passiveLinear = ["resistor", "switch", "capacitor", "inductor", "thermistor"] as const;
const linear = [...passiveLinear, "voltageSource", "currentSource", "controlledSource"] as const;
/** Whatever curve it has, an element of two terminals answers a small change of its volts with one slope. */
const ofTwoTerminals = kinds.filter((k) => terminalFields(k).length === 2 && k !== "controlledSource");

const silenced = (element: CircuitElement): CircuitElement => {
  if (element.kind === "voltageSource") return { ...element, volts: 0 };
  return element.kind === "currentSource" ? { ...element, amps: 0 } : element;
};

const pushing = (id: string, node: NodeName, amps: number): CircuitElement => ({
  kind: "currentSource",
  id,
  from: ground,
  to: node,
  amps,
});

describe("linear networks", () => {
  it("superpose: all sources do together what each does alone", () => {
    assertLaw(
      fc.property(networks({ kinds: linear, most: 8 }), ({ elements, nodes }) => {
        const together = solved(elements);
        const sources = elements.filter((e) => silenced(e) !== e);
        const alone = sources.map((source) =>
          solved(elements.map((element) => (element === source ? element : silenced(element)))),
        );
        const expectSum = (whole: number, parts: readonly number[], floor: number, what: string) => {
          const sum = parts.reduce((total, part) => total + part, 0);
          const size = parts.reduce((total, part) => total + Math.abs(part), 0);
          expect(Math.abs(whole - sum), what).toBeLessThanOrEqual(1e-9 * size + floor);
        };
        for (const node of nodes)
          expectSum(
            together.volts(node),
            alone.map((point) => point.volts(node)),
            1e-12,
            node,
          );
        for (const { id } of elements)
          expectSum(
            together.amps(id),
            alone.map((point) => point.amps(id)),
            1e-13,
            id,
          );
      }),
      { numRuns: 200 },
    );
  }, 60_000);

  it("keep their currents when every resistance and every source voltage grows alike", () => {
    const scaled = (element: CircuitElement, k: number): CircuitElement => {
      if (element.kind === "resistor") return { ...element, ohms: k * element.ohms };
      if (element.kind === "thermistor")
        return { ...element, platinumOhms: k * (element.platinumOhms ?? 100) };
      if (element.kind === "switch") {
        const { closedOhms = 1e-3, openOhms = 1e12 } = element;
        return { ...element, closedOhms: k * closedOhms, openOhms: k * openOhms };
      }
      if (element.kind === "voltageSource") {
        const inner = element.ohms === undefined ? {} : { ohms: k * element.ohms };
        return { ...element, volts: k * element.volts, ...inner };
      }
      if (element.kind !== "controlledSource") return element;
      const factor = { vcvs: 1, vccs: 1 / k, ccvs: k, cccs: 1 }[element.type];
      return { ...element, gain: factor * element.gain };
    };
    const platinum = (element: CircuitElement): CircuitElement =>
      element.kind === "thermistor"
        ? {
            kind: "thermistor",
            id: element.id,
            a: element.a,
            b: element.b,
            celsius: element.celsius,
            platinumOhms: 100,
          }
        : element;
    assertLaw(
      fc.property(networks({ kinds: linear, most: 8 }), decades(-1, 2), ({ elements, nodes }, k) => {
        const all = elements.map(platinum);
        const before = solved(all);
        const after = solved(all.map((element) => scaled(element, k)));
        for (const { id } of all) close(after.amps(id), before.amps(id), 1e-9, 1e-13);
        for (const node of nodes) close(after.volts(node), k * before.volts(node), 1e-9, 1e-12 * k);
      }),
      { numRuns: 200 },
    );
  }, 60_000);

  it("are reciprocal where they are passive: amps at one node raise another as much as the other way round", () => {
    assertLaw(
      fc.property(networks({ kinds: passiveLinear, most: 8 }), fc.nat(), fc.nat(), (drawn, i, j) => {
        const { elements, nodes } = drawn;
        const [a, b] = [nodes[1 + (i % (nodes.length - 1))], nodes[1 + (j % (nodes.length - 1))]];
        const quiet = elements.map(silenced);
        const atA = solved([...quiet, pushing("push", a, 1)]);
        const atB = solved([...quiet, pushing("push", b, 1)]);
        close(atA.volts(b), atB.volts(a));
      }),
      { numRuns: 200 },
    );
  }, 60_000);
});

describe("small changes about an operating point", () => {
  it.each(ofTwoTerminals)(
    "are reciprocal whatever the curves, beside a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ kinds: ofTwoTerminals, always: kind }),
          fc.nat(),
          fc.nat(),
          ({ elements, nodes }, i, j) => {
            const [a, b] = [nodes[1 + (i % (nodes.length - 1))], nodes[1 + (j % (nodes.length - 1))]];
            const all = [...elements, pushing("push?a", a, 0), pushing("push?b", b, 0)];
            const circuit = prepared(all);
            const ohms = [a, b].map((node) => {
              pointOf(circuit, all);
              return requireValue(circuit.thevenin(node, ground)).ohms;
            });
            // A battery at rest bends within 10 mA: there the push is to be smaller, and the slope still changes on the way.
            const bends = elements.some((element) => element.kind === "battery");
            const [push, part] = bends ? [1e-6, 2e-2] : [1e-5, 1e-5];
            /** Volts per ampere at `to` for a current at `from` that moves `from` by `push` volts either way. */
            const transfer = (from: string, to: NodeName, own: number): number => {
              const [up, down] = [push / own, -push / own].map((amps) => {
                circuit.set(from, { amps });
                return pointOf(circuit, all).volts(to);
              });
              circuit.set(from, { amps: 0 });
              return (up - down) / ((2 * push) / own);
            };
            const [there, back] = [transfer("push?a", b, ohms[0]), transfer("push?b", a, ohms[1])];
            // A passive network passes on at most the mean. Volts are known to some 1e-11.
            const mean = Math.sqrt(ohms[0] * ohms[1]);
            const floor = (1e-11 / push) * Math.max(...ohms);
            expect(Math.abs(there - back)).toBeLessThanOrEqual(part * mean + floor);
            expect(Math.abs(there)).toBeLessThanOrEqual((1 + part) * mean + floor);
          },
        ),
        { numRuns: 25 },
      );
    },
    60_000,
  );
});
