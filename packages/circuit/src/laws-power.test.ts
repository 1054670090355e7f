import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { OperatingPoint } from "./circuit";
import type { CircuitElement } from "./network";
import { windingOhmsFactor } from "./physics/copper-winding";
import { kinds } from "./sample-elements";
import { networks } from "./testing/arbitrary-network";
import { assertLaw } from "./testing/assert-law";
import { solved } from "./testing/solved";
import { ampsInto, mayDeliver, terminalsOf, withProbes } from "./testing/terminals";

/** Watts into an element through all its terminals, and how far rounding may have moved them. */
function wattsInto(element: CircuitElement, point: OperatingPoint) {
  const amps = ampsInto(element, point);
  let watts = 0;
  let size = 0;
  let slack = 1e-18;
  for (const [k, { node }] of terminalsOf(element).entries()) {
    const volts = point.volts(node);
    watts += volts * amps[k];
    size += Math.abs(volts * amps[k]);
    // Kirchhoff's law closes to 2e-9 (see laws-kirchhoff), and a voltage is rounded by some 8 parts of its last digit.
    slack += (2e-9 * Math.abs(amps[k]) + 1e-14) * Math.abs(volts);
  }
  return { watts, size, slack };
}

describe("power", () => {
  it.each(kinds)(
    "is never made by passive elements beside a %s, and what sources give they take",
    (kind) => {
      assertLaw(
        fc.property(networks({ always: kind }), ({ elements }) => {
          const point = solved(withProbes(elements));
          let sum = 0;
          let turnover = 0;
          for (const element of elements) {
            const { watts, size, slack } = wattsInto(element, point);
            if (!mayDeliver(element)) expect(watts, element.id).toBeGreaterThanOrEqual(-slack);
            sum += watts;
            turnover += size;
          }
          expect(Math.abs(sum)).toBeLessThanOrEqual(4e-9 * turnover);
        }),
        { numRuns: 25 },
      );
    },
    60_000,
  );

  it("of a motor is heat and what its shaft takes, running or held", () => {
    assertLaw(
      fc.property(networks({ always: "motor" }), ({ elements }) => {
        const point = solved(elements);
        for (const element of elements) {
          if (element.kind !== "motor") continue;
          const { id, ohms, motorConstant, brushVolts = 0, celsius = 20 } = element;
          const amps = point.quantity(id, "ampsArmature");
          const speed = point.quantity(id, "radiansPerSecond");
          const watts = (point.volts(element.plus) - point.volts(element.minus)) * amps;
          const copper = ohms * windingOhmsFactor(celsius) * amps ** 2;
          const brushes = brushVolts * Math.abs(amps);
          const shaft = motorConstant * speed * amps;
          expect(shaft).toBeGreaterThanOrEqual(-1e-12);
          if (element.locked) expect(Math.abs(shaft)).toBe(0);
          // The brushes' drop bends over within 0.1 A: between none of it and all of it.
          const size = 1e-8 * (Math.abs(watts) + copper) + 1e-14;
          expect(watts).toBeGreaterThanOrEqual(copper + shaft - size);
          expect(watts).toBeLessThanOrEqual(copper + shaft + brushes + size);
        }
      }),
      { numRuns: 200 },
    );
  }, 60_000);

  it("of a switching PTC is what it gives up to its surroundings", () => {
    assertLaw(
      fc.property(networks({ always: "switchingPtc" }), ({ elements }) => {
        const point = solved(elements);
        for (const element of elements) {
          if (element.kind !== "switchingPtc") continue;
          const watts = (point.volts(element.a) - point.volts(element.b)) * point.amps(element.id);
          const above = point.quantity(element.id, "celsius") - (element.ambientCelsius ?? 20);
          const given = element.wattsPerKelvin * above;
          expect(Math.abs(watts - given)).toBeLessThanOrEqual(1e-6 * (watts + element.wattsPerKelvin));
        }
      }),
      { numRuns: 200 },
    );
  }, 60_000);
});
