import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CircuitElement, operatingPoint, prepareCircuit } from "../index";
import type { Relay } from "../kinds/relay";

// fast-check prints seed and path of a failing run; give them as { seed, path } to fc.assert to repeat it.

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const decades = (min: number, max: number) => between(Math.log10(min), Math.log10(max)).map((x) => 10 ** x);
const sometimes = (numbers: fc.Arbitrary<number>) => fc.oneof(fc.constant(0), numbers);
const R = (id: string, a: string, b: string, ohms: number): CircuitElement => ({
  kind: "resistor",
  id,
  a,
  b,
  ohms,
});

const batteries = fc.record({
  capacityAmpereHours: between(20, 120),
  stateOfCharge: between(0, 1),
  celsius: between(-30, 50),
  resistanceScale: decades(0.5, 20),
  cells: fc.constantFrom(5, 6),
});
const alternators = fc.record({
  radiansPerSecond: sometimes(between(50, 1500)),
  bandVolts: decades(0.02, 0.5),
  fieldScale: fc.constantFrom(0, 0.3, 1),
  diodeOpen: fc.boolean(),
  celsius: between(-30, 100),
});
const motors = fc.record({
  ohms: decades(0.02, 5),
  motorConstant: decades(0.005, 0.2),
  viscousFriction: sometimes(decades(1e-7, 1e-3)),
  coulombFriction: sometimes(decades(1e-3, 0.1)),
  loadTorque: sometimes(decades(1e-3, 1)),
  loadPerSpeedSquared: sometimes(decades(1e-8, 1e-5)),
  brushVolts: sometimes(between(0.2, 2)),
  locked: fc.boolean(),
  celsius: between(-30, 120),
});
const heats = fc.option(
  fc.record({
    windingToHousing: decades(0.05, 2),
    housingToAmbient: decades(0.1, 3),
    windingCapacity: fc.constant(60),
    housingCapacity: fc.constant(900),
    ambientCelsius: between(-30, 60),
    heatInBalance: fc.boolean(),
  }),
);
const wires = fc.record({
  plus: decades(1e-4, 1),
  ground: decades(1e-4, 0.5),
  engine: decades(1e-4, 0.5),
  sense: fc.oneof(decades(0.01, 1e3), fc.constant(1e12)),
  motor: decades(1e-3, 1e3),
  load: decades(0.05, 1e3),
});
const networks = fc
  .tuple(
    batteries,
    alternators,
    motors,
    heats,
    wires,
    fc.constantFrom("none", "resistor", "diode", "reversedDiode"),
    fc.constantFrom("own", "remote"),
  )
  .map(([battery, alternator, motor, heat, wire, suppressor, sense]): CircuitElement[] => [
    { kind: "battery", id: "G1", positive: "p", negative: "n", ...battery },
    {
      kind: "alternator",
      id: "G2",
      plus: "b",
      minus: "e",
      lamp: "d",
      ...(sense === "remote" ? { sense: "s" } : {}),
      ...alternator,
    },
    { kind: "motor", id: "M1", plus: "m", minus: "0", ...motor, ...heat },
    {
      kind: "relay",
      id: "K1",
      coilPlus: "m",
      coilMinus: "0",
      common: "b",
      normallyOpen: "no",
      normallyClosed: "nc",
      suppressor,
    },
    { kind: "filament", id: "E1", a: "b", b: "d", ratedVolts: 12, ratedWatts: 3 },
    R("W1", "p", "b", wire.plus),
    R("W2", "n", "0", wire.ground),
    R("W3", "e", "0", wire.engine),
    R("W4", "b", "s", wire.sense),
    R("W5", "b", "m", wire.motor),
    R("R1", "b", "0", wire.load),
    R("R2", "no", "0", 20),
    R("R3", "nc", "0", 20),
  ]);

describe("batteries, alternators, motors and relays together", () => {
  it("come to an operating point by Newton alone, with Kirchhoff's law and no power from nothing", () => {
    fc.assert(
      fc.property(networks, (elements) => {
        const result = operatingPoint({ ground: "0", elements }, { shuntSteps: 0, sourceSteps: 0 });
        if (!result.ok) {
          // A relay whose load pulls its own feed down has no rest; that is for the error to say.
          expect(result.error).toMatchObject({ element: "K1" });
          expect(result.error.message).toContain("no rest");
          return;
        }
        const { value } = result;
        expect(value.residualAmps).toBeLessThan(1e-7);
        const across = (a: string, b: string) =>
          (a === "0" ? 0 : value.volts(a)) - (b === "0" ? 0 : value.volts(b));
        expect(across("m", "0") * value.amps("M1")).toBeGreaterThanOrEqual(-1e-9);
        expect(across("m", "0") * value.amps("K1")).toBeGreaterThanOrEqual(-1e-9);
        // Power into all resistances comes from the battery's EMF and from the shaft, less what they keep for themselves.
        const taken = elements.reduce(
          (sum, element) =>
            element.kind === "resistor" ? sum + across(element.a, element.b) * value.amps(element.id) : sum,
          0,
        );
        const supplied = across("n", "p") * value.amps("G1") + value.quantity("G2", "wattsShaft");
        // The exciter diodes feed field and lamp beside B+: with D+ at up to 20 V and 10 Ω no more than 60 W.
        expect(taken).toBeLessThanOrEqual(supplied + 60 + 1e-6 * Math.abs(supplied));
      }),
      { numRuns: 400 },
    );
  });

  it("answer the same from a warm start, whatever was solved before", () => {
    fc.assert(
      fc.property(
        networks,
        fc.array(sometimes(between(50, 1500)), { minLength: 1, maxLength: 4 }),
        (elements, speeds) => {
          const without = elements.filter(({ kind }) => kind !== "relay");
          const circuit = prepareCircuit({ ground: "0", elements: without });
          if (!circuit.ok) throw new Error(circuit.error.message);
          for (const radiansPerSecond of speeds) {
            expect(circuit.value.set("G2", { radiansPerSecond })).toMatchObject({ ok: true });
            const warm = circuit.value.operatingPoint();
            const cold = operatingPoint({
              ground: "0",
              elements: without.map((element) =>
                element.kind === "alternator" ? { ...element, radiansPerSecond } : element,
              ),
            });
            if (!warm.ok || !cold.ok) throw new Error("no operating point");
            expect(Math.abs(warm.value.volts("b") - cold.value.volts("b"))).toBeLessThan(1e-6);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe("bad input", () => {
  const supply: CircuitElement = { kind: "voltageSource", id: "v", positive: "a", negative: "0", volts: 12 };
  const refused = (element: object) => {
    const result = operatingPoint({ ground: "0", elements: [supply, element as CircuitElement] });
    return result.ok ? undefined : { code: result.error.code, field: result.error.field };
  };
  const motor = { kind: "motor", id: "M1", plus: "a", minus: "0", ohms: 1, motorConstant: 0.05 };
  const battery = { kind: "battery", id: "G1", positive: "a", negative: "0", capacityAmpereHours: 60 };
  const alternator = { kind: "alternator", id: "G2", plus: "a", minus: "0", radiansPerSecond: 500 };
  const relay = { kind: "relay", id: "K1", coilPlus: "a", coilMinus: "0", common: "a", normallyOpen: "b" };

  it.each([
    [motor, { ohms: 0 }, "ohms"],
    [motor, { ohms: Number.NaN }, "ohms"],
    [motor, { motorConstant: -1 }, "motorConstant"],
    [motor, { inertia: 0 }, "inertia"],
    [motor, { coulombFriction: -1 }, "coulombFriction"],
    [motor, { windingToHousing: 1 }, "housingToAmbient"],
    [battery, { stateOfCharge: 1.1 }, "stateOfCharge"],
    [battery, { capacityAmpereHours: 0 }, "capacityAmpereHours"],
    [battery, { openVolts: [[0, 12]] }, "openVolts"],
    [
      battery,
      {
        openVolts: [
          [0, 12],
          [1, 11],
        ],
      },
      "openVolts",
    ],
    [
      battery,
      {
        openVolts: [
          [0, 12],
          [0.9, 13],
        ],
      },
      "openVolts",
    ],
    [alternator, { radiansPerSecond: -1 }, "radiansPerSecond"],
    [alternator, { ohms: 1 }, "ohms"],
    [alternator, { ratedRadiansPerSecond: 100 }, "ratedRadiansPerSecond"],
    [alternator, { diodeOpen: true, diodeShorted: true }, "diodeShorted"],
    [relay, { dropOutVolts: 7 }, "dropOutVolts"],
    [relay, { suppressor: "varistor" }, "suppressor"],
    [relay, { heldReleased: true, heldEnergised: true }, "heldEnergised"],
    [relay, { bounceSeconds: [1e-3] }, "bounceSeconds"],
    [relay, { bounceSeconds: [2e-3, 1e-3] }, "bounceSeconds"],
    [relay, { normallyOpen: undefined }, "normallyOpen"],
  ])("%o with %o is refused", (element, change, field) => {
    expect(refused(element)).toBeUndefined();
    expect(refused({ ...element, ...change })).toEqual({ code: "invalid_element", field });
  });

  it("refuses a change that would need other parts", () => {
    const circuit = prepareCircuit({
      ground: "0",
      elements: [supply, relay as Relay, motor as CircuitElement],
    });
    if (!circuit.ok) throw new Error(circuit.error.message);
    for (const [id, change] of [
      ["K1", { operateTravelSeconds: 1e-3 }],
      ["M1", { windingToHousing: 1 }],
    ] as const) {
      expect(circuit.value.set(id, change)).toMatchObject({
        ok: false,
        error: { code: "invalid_element", element: id },
      });
    }
  });
});

describe("an alternator whose charge lamp has come off", () => {
  it("is solved: D+ carries what is left of two large currents, and stands a diode's way below B+", () => {
    const result = operatingPoint({
      ground: "0",
      elements: [
        { kind: "voltageSource", id: "G1", positive: "b", negative: "0", volts: 8.28, ohms: 0.01 },
        R("load", "b", "0", 0.06),
        R("lamp", "b", "d", 25e6),
        R("sense", "b", "s", 1e-3),
        {
          kind: "alternator",
          id: "G2",
          plus: "b",
          minus: "0",
          sense: "s",
          lamp: "d",
          radiansPerSecond: 900,
          fieldScale: 0.657,
          diodeOpen: true,
          ratedAmps: 60,
        },
      ],
    });
    if (!result.ok) throw new Error(result.error.message);
    const below = result.value.volts("b") - result.value.volts("d");
    expect(below).toBeGreaterThan(0);
    expect(below).toBeLessThan(0.5);
    expect(result.value.amps("lamp")).toBeCloseTo(below / 25e6, 14);
  });
});
