import fc from "fast-check";
import { describe, it } from "vitest";
import type { CircuitElement, NodeName } from "./network";
import { kinds } from "./sample-elements";
import { ground, networks } from "./testing/arbitrary-network";
import { assertLaw } from "./testing/assert-law";
import { close, solved, voltsFloor } from "./testing/solved";
import { changed, terminalsOf } from "./testing/terminals";

/** The same elements under other names of nodes; what else is text stays. */
function renamed(element: CircuitElement, name: (node: NodeName) => NodeName): CircuitElement {
  const { controlPositive, controlNegative } = element as {
    controlPositive?: NodeName;
    controlNegative?: NodeName;
  };
  const heard = Object.entries({ controlPositive, controlNegative }).flatMap(([field, node]) =>
    node === undefined ? [] : [[field, name(node)] as const],
  );
  const ends = terminalsOf(element).map(({ field, node }) => [field, name(node)] as const);
  return changed(element, Object.fromEntries([...ends, ...heard]));
}

describe("the same circuit, stated otherwise,", () => {
  it.each(kinds)(
    "has the same answer whatever the order and the names, with a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ always: kind }),
          fc.array(fc.nat(), { minLength: 12, maxLength: 12 }),
          ({ elements, nodes }, keys) => {
            const name = (node: NodeName) =>
              node === ground ? node : `z${node.split("").reverse().join("")}`;
            const shuffled = elements
              .map((element, i) => ({ element, key: keys[i % keys.length] + 31 * (i % 7) }))
              .sort((p, q) => p.key - q.key)
              .map(({ element }) => renamed(element, name));
            const plain = solved(elements);
            const other = solved(shuffled);
            const floor = voltsFloor(elements, plain);
            for (const node of nodes) close(other.volts(name(node)), plain.volts(node), 1e-9, floor);
            for (const { id } of elements) close(other.amps(id), plain.amps(id), 1e-9, 1e-9);
          },
        ),
        { numRuns: 25 },
      );
    },
    60_000,
  );

  it.each(kinds)(
    "does not change when a node is split by 0.1 µΩ, with a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ always: kind }),
          fc.nat(),
          fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
          ({ elements, nodes }, pick, moves) => {
            const node = nodes[1 + (pick % (nodes.length - 1))];
            let seen = 0;
            const split = elements.map((element) => {
              const moved = terminalsOf(element).filter(
                (terminal) => terminal.node === node && moves[seen++ % moves.length],
              );
              return changed(element, Object.fromEntries(moved.map(({ field }) => [field, "split"])));
            });
            const bridge = { kind: "resistor", id: "bridge", a: node, b: "split", ohms: 1e-7 } as const;
            const before = solved(elements);
            const after = solved([...split, bridge]);
            // What lies across the bridge moves the rest by as much, and by a few times that where a regulator amplifies.
            const across = 1e-7 * Math.abs(after.amps("bridge"));
            close(after.volts("split"), after.volts(node), 1e-12, 1.01 * across + 1e-12);
            const floor = voltsFloor(elements, before);
            for (const each of nodes) close(after.volts(each), before.volts(each), 1e-9, 4 * across + floor);
          },
        ),
        { numRuns: 25 },
      );
    },
    60_000,
  );
});
