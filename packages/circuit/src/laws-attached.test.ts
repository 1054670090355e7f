import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Attachable } from "./attachable";
import { operatingPoint } from "./prepare-circuit";
import { kinds } from "./sample-elements";
import { figures } from "./testing/arbitrary-figures";
import { networkOf, networks } from "./testing/arbitrary-network";
import { decades } from "./testing/arbitrary-numbers";
import { assertLaw } from "./testing/assert-law";
import { close, pointOf, prepared, requireValue, solved, voltsFloor } from "./testing/solved";

/** Kinds with one rest: attaching and preparing anew come to it by different ways. */
const remembering = ["relay", "comparator", "driver", "switchingPtc", "regulator"];
const forgetting = kinds.filter((kind) => !remembering.includes(kind));

const attachable = [
  "resistor",
  "voltageSource",
  "currentSource",
  "switch",
  "diode",
  "filament",
  "curve",
] as const;
const leads = {
  resistor: ["a", "b"],
  voltageSource: ["positive", "negative"],
  currentSource: ["from", "to"],
  switch: ["a", "b"],
  diode: ["anode", "cathode"],
  filament: ["a", "b"],
  curve: ["a", "b"],
} as const;

const attachments = fc
  .constantFrom(...attachable)
  .chain((kind) => fc.tuple(fc.constant(kind), figures[kind] as fc.Arbitrary<object>, fc.nat(), fc.nat()));

describe("an attached element", () => {
  it.each(forgetting)(
    "acts as one that was prepared with the network, in which there is a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ kinds: forgetting, always: kind }),
          fc.array(attachments, { minLength: 1, maxLength: 4 }),
          ({ elements, nodes }, list) => {
            const circuit = prepared(elements);
            const before = pointOf(circuit, elements);
            const placed = list.map(([own, fields, i, j], k) => {
              const [first, second] = leads[own];
              const ends = { [first]: nodes[i % nodes.length], [second]: nodes[j % nodes.length] };
              const inner = own === "voltageSource" ? { ohms: 100 } : {};
              const { seriesOhms: _, ...rest } = fields as { seriesOhms?: number };
              return { ...inner, ...rest, ...ends, kind: own, id: `lead${k}` } as Attachable;
            });
            for (const element of placed) expect(circuit.attach(element)).toEqual({ ok: true });
            const all = [...elements, ...placed];
            const attached = pointOf(circuit, all);
            const whole = requireValue(operatingPoint(networkOf(all)));
            const floor = voltsFloor(all, whole);
            for (const node of nodes) close(attached.volts(node), whole.volts(node), 1e-8, floor);
            for (const { id } of all) close(attached.amps(id), whole.amps(id), 1e-7, floor);
            for (const { id } of placed) expect(circuit.detach(id)).toEqual({ ok: true });
            const after = pointOf(circuit, elements);
            for (const node of nodes)
              close(after.volts(node), before.volts(node), 1e-8, voltsFloor(elements, before));
          },
        ),
        { numRuns: 25 },
      );
    },
    60_000,
  );
});

describe("thevenin", () => {
  const linear = [
    "resistor",
    "voltageSource",
    "currentSource",
    "switch",
    "capacitor",
    "inductor",
    "thermistor",
    "controlledSource",
  ] as const;

  it("says of a linear network what any load will see", () => {
    assertLaw(
      fc.property(
        networks({ kinds: linear, most: 8 }),
        fc.nat(),
        fc.nat(),
        fc.array(decades(-3, 8), { minLength: 2, maxLength: 2 }),
        ({ elements, nodes }, i, j, loads) => {
          const [a, b] = [nodes[i % nodes.length], nodes[j % nodes.length]];
          fc.pre(a !== b);
          const { openVolts, ohms } = requireValue(prepared(elements).thevenin(a, b));
          for (const load of loads) {
            const point = solved([...elements, { kind: "resistor", id: "load", a, b, ohms: load }]);
            const across = load * point.amps("load");
            // Divider of source and load; open volts are the small difference of two that may be large.
            const floor = 1e-9 * (load / (load + Math.abs(ohms))) + 1e-12;
            close(across, (openVolts * load) / (load + ohms), 1e-7, floor);
          }
        },
      ),
      { numRuns: 200 },
    );
  }, 60_000);
});
