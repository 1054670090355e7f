import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CircuitElement } from "./network";
import type { CircuitError } from "./result";
import { kinds } from "./sample-elements";
import { type Drawn, networkOf, networks } from "./testing/arbitrary-network";
import { between } from "./testing/arbitrary-numbers";
import { assertLaw } from "./testing/assert-law";
import {
  gaussRule,
  lostWatts,
  type Moment,
  momentsOf,
  recordingOf,
  storedJoules,
  stores,
} from "./testing/energy";
import { requireValue } from "./testing/solved";
import { mayDeliver, probeIdOf, terminalsOf, withProbes } from "./testing/terminals";
import type { TransientOptions } from "./transient/options";
import { transient } from "./transient/prepare-transient";
import type { Transient, Waveforms } from "./transient/transient-circuit";

const pulse = { kind: "pulse", low: 0, high: 12, hertz: 250, duty: 0.4, delaySeconds: 5e-4 } as const;
const limits = {
  untilSeconds: 6e-3,
  start: "rest",
  relativeTolerance: 1e-5,
  voltTolerance: 1e-9,
  ampTolerance: 1e-9,
  internalTolerance: 10,
  minStepSeconds: 1e-16,
  maxSteps: 4000,
} as const;
/** Some billionths of an ampere at some volts for the time of a run, J. */
const joulesFloor = 2e-9;
const pulsed = { ...limits, drives: [{ element: "supply", field: "volts", wave: pulse }] };

/** Why a run may fail that is in order. */
function isExcused({ code, seconds }: CircuitError, elements: readonly CircuitElement[]): boolean {
  // Rings for thousands of periods.
  if (code === "step_limit") return true;
  // A charged capacitor laid straight over a junction drives more amps than numbers can hold.
  if (seconds === 0) return true;
  // On the falling line of a fold-back there may be no answer, or one that leaps (see devices/regulator).
  return elements.some((element) => element.kind === "regulator" && element.foldbackAmps !== undefined);
}

/** Follows a network with an ammeter in every lead. What is excused is drawn anew; any other error fails the test. */
function followed({ elements, nodes }: Drawn, options: TransientOptions): Transient {
  const all = withProbes(elements);
  const others = elements.flatMap((element) => terminalsOf(element).map(({ node }) => node));
  const record = recordingOf(all, [...new Set([...nodes, ...others])]);
  const run = transient(networkOf(all), { ...options, record });
  if (!run.ok) fc.pre(!isExcused(run.error, elements));
  return requireValue(run);
}

/** What goes into an element through all its leads: joules at the end and at the least, and the least watts. */
function intake(element: CircuitElement, run: Transient) {
  const leads = (waves: Waveforms) =>
    terminalsOf(element).map(({ field, node }) => ({
      volts: waves.volts(node),
      amps: waves.amps(probeIdOf(element.id, field)),
    }));
  const { times, parts } = gaussRule(run.seconds);
  const between = leads(run.samplesAt(times));
  let joules = 0;
  let turnover = 0;
  let leastJoules = 0;
  for (const [i, part] of parts.entries()) {
    for (const { volts, amps } of between) {
      joules += part * volts[i] * amps[i];
      turnover += part * Math.abs(volts[i] * amps[i]);
    }
    leastJoules = Math.min(leastJoules, joules);
  }
  const own = leads(run);
  let leastWatts = 0;
  for (let i = 0; i < run.seconds.length; i++) {
    const terms = own.map(({ volts, amps }) => volts[i] * amps[i]);
    const size = terms.reduce((sum, term) => sum + Math.abs(term), 0);
    leastWatts = Math.min(leastWatts, terms.reduce((sum, term) => sum + term, 0) + 1e-7 * size);
  }
  return { joules, turnover, leastJoules, leastWatts };
}

/** Integral of something that is known at each moment. */
function integral(run: Transient, at: (now: Moment) => number): number {
  const { times, parts } = gaussRule(run.seconds);
  const samples = run.samplesAt(times);
  const moment = momentsOf(samples);
  return parts.reduce((sum, part, i) => sum + part * at(moment(i)), 0);
}

const passive = kinds.filter((kind) => !mayDeliver({ kind } as CircuitElement));

describe("in time", () => {
  it.each(kinds)(
    "sources pay for all, and what is passive gives no more than it got, with a %s",
    (kind) => {
      assertLaw(
        fc.property(networks({ always: kind, most: 3 }), (drawn) => {
          const run = followed(drawn, pulsed);
          const last = run.seconds.length - 1;
          let sum = 0;
          let all = 0;
          for (const element of drawn.elements) {
            const { joules, turnover, leastJoules, leastWatts } = intake(element, run);
            sum += joules;
            all += turnover;
            if (mayDeliver(element)) continue;
            // Everything starts without charge, current and motion.
            expect(leastJoules, element.id).toBeGreaterThanOrEqual(-1e-4 * turnover - joulesFloor);
            if (!stores(element)) expect(leastWatts, element.id).toBeGreaterThanOrEqual(-1e-11);
          }
          expect(Math.abs(sum)).toBeLessThanOrEqual(1e-6 * all);
          expect(run.seconds[last]).toBe(limits.untilSeconds);
        }),
        { numRuns: 8 },
      );
    },
    60_000,
  );

  it.each(["capacitor", "inductor", "motor", "relay"] as const)(
    "what goes into a %s is stored or lost",
    (kind) => {
      assertLaw(
        fc.property(networks({ always: kind, most: 3 }), (drawn) => {
          const run = followed(drawn, pulsed);
          const last = run.seconds.length - 1;
          const moment = momentsOf(run);
          for (const element of drawn.elements) {
            if (!stores(element) || lostWatts(element, moment(0)) === undefined) continue;
            const [from, to] = terminalsOf(element);
            const taken = (now: Moment) => (now.volts(from.node) - now.volts(to.node)) * now.amps(element.id);
            const joules = integral(run, taken);
            const turnover = integral(run, (now) => Math.abs(taken(now)));
            const stored = storedJoules(element, moment(last)) - storedJoules(element, moment(0));
            const lost = integral(run, (now) => lostWatts(element, now) ?? Number.NaN);
            expect(Math.abs(joules - stored - lost), element.id).toBeLessThanOrEqual(
              2e-3 * turnover + joulesFloor,
            );
          }
        }),
        { numRuns: 40 },
      );
    },
    60_000,
  );

  it("a switching PTC holds or gives up the heat that it takes", () => {
    assertLaw(
      fc.property(networks({ always: "switchingPtc", most: 3 }), (drawn) => {
        const run = followed(drawn, pulsed);
        const last = run.seconds.length - 1;
        for (const element of drawn.elements) {
          if (element.kind !== "switchingPtc") continue;
          const { id, wattsPerKelvin, joulesPerKelvin = 20 * wattsPerKelvin, ambientCelsius = 20 } = element;
          const { joules } = intake(element, run);
          const celsius = run.quantity(id, "celsius");
          const held = joulesPerKelvin * (celsius[last] - celsius[0]);
          const given = integral(
            run,
            (now) => wattsPerKelvin * (now.quantity(id, "celsius") - ambientCelsius),
          );
          expect(Math.abs(joules - held - given)).toBeLessThanOrEqual(2e-3 * joules + 1e-9);
        }
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  it("a battery loses the charge that it gives, and keeps no more than it is given", () => {
    assertLaw(
      fc.property(networks({ always: "battery", most: 3 }), (drawn) => {
        const run = followed(drawn, pulsed);
        const last = run.seconds.length - 1;
        for (const element of drawn.elements) {
          if (element.kind !== "battery") continue;
          const share = run.quantity(element.id, "stateOfCharge");
          const kept = 3600 * element.capacityAmpereHours * (share[last] - share[0]);
          const through = (sign: number) => integral(run, (now) => Math.max(0, sign * now.amps(element.id)));
          const [given, taken] = [through(-1), through(1)];
          // Chords between samples stand for the current: a stage that trips leaves some tenths of a per cent between them.
          const slack = 1e-2 * (given + taken) + 1e-9 * element.capacityAmpereHours;
          expect(kept).toBeLessThanOrEqual(taken - given + slack);
          expect(kept).toBeGreaterThanOrEqual(-given - slack);
        }
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  it("Kirchhoff's law holds at every sample, by the recorded amps", () => {
    assertLaw(
      fc.property(networks({ most: 4 }), (drawn) => {
        const run = followed(drawn, pulsed);
        for (const node of drawn.nodes.slice(1)) {
          const leads = drawn.elements.flatMap((element) =>
            terminalsOf(element).flatMap(({ field, node: own }) =>
              own === node ? [run.amps(probeIdOf(element.id, field))] : [],
            ),
          );
          for (let i = 0; i < run.seconds.length; i++) {
            const sum = leads.reduce((total, amps) => total + amps[i], 0);
            const size = leads.reduce((total, amps) => total + Math.abs(amps[i]), 0);
            expect(Math.abs(sum), node).toBeLessThanOrEqual(1e-7 * size + 1e-12);
          }
        }
      }),
      { numRuns: 60 },
    );
  }, 60_000);

  it("what flows into a capacitor is the change of its charge", () => {
    assertLaw(
      fc.property(networks({ always: "capacitor", most: 3 }), (drawn) => {
        const run = followed(drawn, pulsed);
        const last = run.seconds.length - 1;
        for (const element of drawn.elements) {
          if (element.kind !== "capacitor") continue;
          const [va, vb] = [run.volts(element.a), run.volts(element.b)];
          const change = element.farads * (va[last] - vb[last] - (va[0] - vb[0]));
          const { average, rms } = run.measure({ amps: element.id });
          const slack = 2e-3 * rms * limits.untilSeconds + 1e-14;
          expect(Math.abs(average * limits.untilSeconds - change)).toBeLessThanOrEqual(slack);
        }
      }),
      { numRuns: 40 },
    );
  }, 60_000);

  it.each(passive)(
    "a passive network left to itself only loses energy, with a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ kinds: ["capacitor", "inductor", "motor", ...passive], always: kind, most: 5 }),
          fc.array(fc.tuple(between(-20, 20), between(-0.1, 0.1)), { minLength: 8, maxLength: 8 }),
          ({ elements, nodes }, starts) => {
            const own = elements
              .filter((element) => !mayDeliver(element) || element.id === "supply")
              .map((element, i): CircuitElement => {
                if (element.kind === "voltageSource") return { ...element, volts: 0 };
                if (element.kind !== "motor") return element;
                return { ...element, startRadiansPerSecond: 5 * starts[i % starts.length][0] };
              });
            const chosen = (which: string, at: 0 | 1) =>
              Object.fromEntries(
                own.flatMap(({ id, kind: k }, i) =>
                  k === which ? [[id, starts[i % starts.length][at]]] : [],
                ),
              );
            const initial = { initialVolts: chosen("capacitor", 0), initialAmps: chosen("inductor", 1) };
            const run = followed({ elements: own, nodes }, { ...limits, ...initial });
            const moment = momentsOf(run);
            let before = Number.POSITIVE_INFINITY;
            const energies = Array.from(run.seconds, (_, i) =>
              own.reduce((sum, element) => sum + storedJoules(element, moment(i)), 0),
            );
            for (const energy of energies) {
              expect(energy).toBeLessThanOrEqual(before + 1e-5 * energies[0] + 1e-15);
              before = energy;
            }
          },
        ),
        { numRuns: 8 },
      );
    },
    60_000,
  );

  it.each(kinds)(
    "every run ends with finite figures or with a reason, with a %s",
    (kind) => {
      assertLaw(
        fc.property(
          networks({ always: kind, most: 4 }),
          fc.constantFrom("rest", "operatingPoint"),
          (drawn, start) => {
            const options = { ...pulsed, start, maxSteps: 3000, relativeTolerance: 1e-3 };
            const result = transient(networkOf(drawn.elements), options);
            if (!result.ok) {
              expect(codes).toContain(result.error.code);
              expect(result.error.element ?? result.error.node).toBeDefined();
              return;
            }
            for (const { id } of drawn.elements)
              expect(result.value.amps(id).every(Number.isFinite), id).toBe(true);
          },
        ),
        { numRuns: 8 },
      );
    },
    60_000,
  );
});

const codes = ["singular", "no_convergence", "step_too_short", "step_limit"];
