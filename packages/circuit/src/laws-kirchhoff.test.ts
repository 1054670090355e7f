import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { OperatingPoint } from "./circuit";
import type { CircuitElement } from "./network";
import { kinds, terminalFields } from "./sample-elements";
import { type Drawn, networks } from "./testing/arbitrary-network";
import { assertLaw } from "./testing/assert-law";
import { close, solved, voltsFloor } from "./testing/solved";
import { ampsInto, terminalsOf, withProbes } from "./testing/terminals";

/** Sum and size of the amps that flow from a node into elements, each said for its terminals. */
function sumAt(
  node: string,
  elements: readonly CircuitElement[],
  into: (e: CircuitElement) => readonly number[],
) {
  let sum = 0;
  let size = 0;
  for (const element of elements) {
    const amps = into(element);
    for (const [k, terminal] of terminalsOf(element).entries()) {
      if (terminal.node !== node) continue;
      sum += amps[k];
      size += Math.abs(amps[k]);
    }
  }
  return { sum, size };
}

/** By what the element itself reports; it must have two terminals. */
const reported = (point: OperatingPoint) => (element: CircuitElement) => {
  const amps = point.amps(element.id);
  return [amps, -amps];
};

function expectBalance({ elements, nodes }: Drawn, into: (e: CircuitElement) => readonly number[]): void {
  for (const node of nodes.slice(1)) {
    const { sum, size } = sumAt(node, elements, into);
    expect(Math.abs(sum), node).toBeLessThanOrEqual(2e-9 * size + 1e-14);
  }
}

const ofTwo = kinds.filter((kind) => terminalFields(kind).length === 2);

describe("Kirchhoff's current law", () => {
  it("holds at every node by the amps that the elements report", () => {
    assertLaw(
      fc.property(networks({ kinds: ofTwo, most: 10 }), (drawn) => {
        expectBalance(drawn, reported(solved(drawn.elements)));
      }),
      { numRuns: 300 },
    );
  }, 60_000);

  it.each(kinds)(
    "holds at every node and for every %s by ammeters in all leads",
    (kind) => {
      assertLaw(
        fc.property(networks({ always: kind }), (drawn) => {
          const { elements, nodes } = drawn;
          const point = solved(withProbes(elements));
          expectBalance(drawn, (element) => ampsInto(element, point));
          const plain = solved(elements);
          const floor = voltsFloor(elements, plain);
          for (const node of nodes) close(point.volts(node), plain.volts(node), 1e-9, floor);
          for (const element of elements) {
            const amps = ampsInto(element, point);
            const size = amps.reduce((sum, each) => sum + Math.abs(each), 0);
            // What flows in at some terminals flows out at the others: no element leaks to the ground by itself.
            expect(Math.abs(amps.reduce((sum, each) => sum + each, 0)), element.id).toBeLessThanOrEqual(
              2e-9 * size + 1e-14,
            );
            const own = element.kind === "regulator" ? -amps[1] : amps[0];
            expect(Math.abs(own - point.amps(element.id)), element.id).toBeLessThanOrEqual(
              2e-9 * size + 1e-14,
            );
          }
        }),
        { numRuns: 40 },
      );
    },
    60_000,
  );
});
