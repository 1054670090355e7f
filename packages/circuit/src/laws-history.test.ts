import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Circuit, OperatingPoint } from "./circuit";
import type { CircuitElement, ElementChange } from "./network";
import { definitionOf, kinds } from "./sample-elements";
import { figures } from "./testing/arbitrary-figures";
import { type Drawn, networks } from "./testing/arbitrary-network";
import { assertLaw } from "./testing/assert-law";
import { close, pointOf, prepared, solved, voltsFloor } from "./testing/solved";

/**
 * Kinds that remember: what is between pulling in and dropping out stays as it was, and a part that heats itself or a
 * supply that folds back may have more than one rest. Of them an answer may depend on what was solved before.
 */
const remembering = new Set(["relay", "comparator", "driver", "switchingPtc", "regulator"]);
const forgetting = kinds.filter((kind) => !remembering.has(kind));

/** Other numbers for some elements of a network: by element a change as `set` takes it. */
type Changes = readonly (readonly [pick: number, seed: number])[];
const changes: fc.Arbitrary<Changes> = fc.array(fc.tuple(fc.nat(), fc.nat()), { minLength: 1, maxLength: 6 });

/**
 * What a controlled source hears and drives, and what contacts switch at the supply, was drawn to fit: with other ohms the
 * one may have no answer and the others may buzz.
 */
const isFitted = (element: CircuitElement, elements: readonly CircuitElement[]): boolean =>
  element.kind === "controlledSource" ||
  /^(controlledSource|relay|comparator)\d+[a-z]/i.test(element.id) ||
  elements.some((other) => other.kind === "controlledSource" && other.controlElement === element.id);

/** Another draw of the same kind, as far as fields can be changed that the element has. */
function changeFor(element: CircuitElement, seed: number): ElementChange {
  const [drawn] = fc.sample(figures[element.kind] as fc.Arbitrary<object>, { numRuns: 1, seed });
  const { fields } = definitionOf(element.kind);
  return Object.fromEntries(
    Object.entries(drawn).filter(([field]) => Object.hasOwn(fields, field) && Object.hasOwn(element, field)),
  );
}

/** Makes the changes that are not refused and says what the elements then are. */
function apply(
  circuit: Circuit,
  elements: readonly CircuitElement[],
  list: Changes,
): readonly CircuitElement[] {
  const now = [...elements];
  for (const [pick, seed] of list) {
    const at = pick % now.length;
    if (isFitted(now[at], now)) continue;
    const change = changeFor(now[at], seed);
    if (circuit.set(now[at].id, change).ok) now[at] = { ...now[at], ...change } as CircuitElement;
  }
  return now;
}

const numbersOf = (point: OperatingPoint, { elements, nodes }: Drawn): readonly number[] => [
  ...nodes.map((node) => point.volts(node)),
  ...elements.map(({ id }) => point.amps(id)),
];

describe("what was solved before", () => {
  it.each(forgetting)(
    "does not matter to a warm start, with a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ kinds: forgetting, always: kind }),
          changes,
          changes,
          (drawn, past, wanted) => {
            const circuit = prepared(drawn.elements);
            pointOf(circuit, drawn.elements);
            const before = apply(circuit, drawn.elements, past);
            pointOf(circuit, before);
            const now = apply(circuit, before, wanted);
            const warm = numbersOf(pointOf(circuit, now), drawn);
            const point = solved(now);
            const cold = numbersOf(point, drawn);
            const floor = voltsFloor(now, point);
            const anew = numbersOf(pointOf(circuit, now, { warmStart: false }), drawn);
            for (const [i, value] of cold.entries()) {
              close(warm[i], value, 1e-8, floor);
              close(anew[i], value, 1e-8, floor);
            }
          },
        ),
        { numRuns: 25 },
      );
    },
    60_000,
  );

  it.each(kinds)(
    "leaves no bit of itself in an answer that starts from a given point, with a %s",
    (kind) => {
      assertLaw(
        fc.property(networks({ always: kind }), changes, changes, changes, (drawn, first, other, wanted) => {
          const circuit = prepared(drawn.elements);
          pointOf(circuit, drawn.elements);
          const startFrom = circuit.startingPoint();
          if (!startFrom) throw new Error("What has been solved has a starting point.");
          const answers = [first, other].map((past) => {
            const past1 = apply(circuit, drawn.elements, past);
            circuit.operatingPoint();
            // Back to where it came from, then to what is asked for.
            for (const [i, element] of drawn.elements.entries()) {
              if (element === past1[i]) continue;
              const { fields } = definitionOf(element.kind);
              const own = Object.entries(element).filter(([field]) => Object.hasOwn(fields, field));
              expect(circuit.set(element.id, Object.fromEntries(own))).toEqual({ ok: true });
            }
            const now = apply(circuit, drawn.elements, wanted);
            return numbersOf(pointOf(circuit, now, { startFrom }), drawn);
          });
          expect(answers[1]).toEqual(answers[0]);
        }),
        { numRuns: 25 },
      );
    },
    60_000,
  );
});
