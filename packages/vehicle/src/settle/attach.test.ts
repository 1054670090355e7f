import type { PrimitiveElement } from "@probeworthy/circuit";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { prepareVehicle, requireCompiled } from "../compile/compile-vehicle";
import type { Fault } from "../document/fault";
import type { VehicleDocument } from "../document/vehicle-document";
import { testPoints } from "../points/test-points";
import { ok } from "../result";
import { scan } from "../simulation/scan";
import { settle } from "../simulation/settle";
import { changeState, startState } from "../simulation/state";
import { thevenin } from "../simulation/thevenin";
import { benchVehicle } from "../testing/bench-vehicle";
import { Drive, idling, keyOn, must, turning } from "../testing/drive";
import { withCircuit } from "./live-circuit";

type Laid = (a: string, b: string) => readonly PrimitiveElement[];

const instruments = {
  voltmeter: (a, b) => [{ kind: "resistor", id: "meter", a, b, ohms: 1e7 }],
  ohmmeter: (a, b) => [
    { kind: "resistor", id: "meter", a, b, ohms: 1000.16 },
    { kind: "currentSource", id: "meterSource", from: b, to: a, amps: 0.4 / 1000.16 },
  ],
  ammeter: (a, b) => [{ kind: "resistor", id: "meter", a, b, ohms: 0.17 }],
  lamp: (a, b) => [{ kind: "filament", id: "meter", a, b, ratedVolts: 12, ratedWatts: 5 }],
} satisfies Record<string, Laid>;

/** A private node needs a circuit prepared with it; tied to nothing but the body it changes no reading. */
const aside: PrimitiveElement = { kind: "resistor", id: "aside", a: "aside", b: "body", ohms: 1 };

const points = testPoints(new Drive().vehicle, new Drive().state).map(({ id }) => id);

describe.each(Object.entries(instruments))("a %s laid across the circuit", (name, lay) => {
  it.each([
    ["key off", {}],
    ["idling", idling],
    ["turning", turning(6)],
  ])(
    "reads what a circuit prepared with it gives: %s",
    (_, conditions) => {
      const { vehicle, state } = new Drive([], conditions);
      for (const point of points) {
        const elements = lay(point, "X9:6");
        const quick = must(settle(vehicle, state, elements));
        const whole = must(settle(vehicle, state, [...elements, aside]));
        const [ours, theirs] = [quick.amps("meter"), whole.amps("meter")];
        // Newton's method ends within 1e-7 of a curved law, and then a step closer; linear laws are exact.
        const relative = name === "lamp" ? 1e-7 : 1e-9;
        expect(Math.abs(ours - theirs), point).toBeLessThan(relative * Math.abs(theirs) + 1e-12);
      }
    },
    60_000,
  );
});

/** One question to a vehicle, answered with everything that comes back. */
type Ask = (document: VehicleDocument) => unknown;

const question: fc.Arbitrary<Ask> = fc
  .record({
    kind: fc.constantFrom<(keyof typeof instruments | "thevenin" | "scan" | "unknown")[]>(
      "voltmeter",
      "ohmmeter",
      "ammeter",
      "lamp",
      "thevenin",
      "scan",
      "unknown",
    ),
    at: fc.constantFrom(...points),
    against: fc.constantFrom("G1:-", "X9:6", "X1.1:h", "X2.4:h"),
    conditions: fc.constantFrom({}, keyOn, turning(7), turning(-4)),
    unplug: fc.constantFrom("", "X2", "X5"),
    faults: fc.constantFrom<Fault[][]>(
      [],
      [{ kind: "seriesResistance", at: "W12", ohms: 0.4 }],
      [{ kind: "shortToGround", at: "X2.4:h", ohms: 1 }],
    ),
  })
  .map(({ kind, at, against, conditions, unplug, faults }) => (document) => {
    const vehicle = must(prepareVehicle(document, faults));
    let state = must(startState(vehicle, conditions));
    if (unplug) state = must(changeState(vehicle, state, { unplug }));
    if (kind === "thevenin") return thevenin(vehicle, state, at, against);
    if (kind === "scan") return scan(vehicle, state, "A1");
    if (kind === "unknown")
      return settle(vehicle, state, [
        { kind: "resistor", id: "meter", a: at, b: "body", ohms: 1 },
        { kind: "currentSource", id: "meter", from: "body", to: against, amps: 1 },
      ]);
    const settled = settle(vehicle, state, instruments[kind](at, against));
    if (!settled.ok) return settled;
    return [settled.value.amps("meter"), ...points.map(settled.value.volts), settled.value.modules];
  });

describe("what has been laid across the circuit", () => {
  it("leaves no trace: each answer is that of a document nobody has asked yet, to the last bit", () => {
    fc.assert(
      fc.property(fc.array(question, { minLength: 2, maxLength: 5 }), (asked) => {
        const shared = { ...benchVehicle };
        for (const ask of asked) expect(ask(shared)).toEqual(ask({ ...benchVehicle }));
      }),
      { seed: 20260301, numRuns: 60 },
    );
  }, 120_000);

  it("is laid anew with the values it comes with", () => {
    const compiled = requireCompiled(new Drive().vehicle);
    const load: PrimitiveElement = { kind: "resistor", id: "load", a: "G1:+", b: "body", ohms: 1000 };
    const amps = () =>
      must(
        withCircuit(compiled, [load], (live) => {
          const before = must(live.solve(true)).amps("load");
          live.ohms("load", 100);
          return ok([before, must(live.solve(false)).amps("load")] as const);
        }),
      );
    const [first, changed] = amps();
    expect(changed / first).toBeCloseTo(10, 2);
    expect(amps()).toEqual([first, changed]);
  });

  it("is taken away when the circuit has no answer with it", () => {
    const { vehicle, state } = new Drive([], keyOn);
    const before = must(settle(vehicle, { ...state })).volts("X2.1:h");
    const refused = settle(vehicle, state, [
      { kind: "resistor", id: "same", a: "X2.1:h", b: "body", ohms: 1 },
      { kind: "resistor", id: "same", a: "X2.1:h", b: "body", ohms: 1 },
    ]);
    expect(refused.ok ? undefined : refused.error.code).toBe("unsolvable");
    expect(must(settle(vehicle, { ...state })).volts("X2.1:h")).toBe(before);
  });
});
