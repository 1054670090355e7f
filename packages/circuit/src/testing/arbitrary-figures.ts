import fc from "fast-check";
import type { CircuitElement } from "../network";
import { between, decades } from "./arbitrary-numbers";

type Kind = CircuitElement["kind"];

/** What an element of a kind is but for its name and where it hangs. */
export type Figures<K extends Kind> = Partial<Omit<Extract<CircuitElement, { kind: K }>, "kind" | "id">>;

type Drawn<Fields> = { [Field in keyof Fields]: fc.Arbitrary<Fields[Field]> };

/** Some fields always, some now and then. */
const record = <Always extends object, Often extends object>(always: Drawn<Always>, often?: Drawn<Often>) =>
  fc.record(
    { ...always, ...often },
    { requiredKeys: Object.keys(always) as (keyof Always)[] },
  ) as unknown as fc.Arbitrary<Always & Partial<Often>>;

const flag = fc.boolean();
const celsius = between(-30, 110);

/**
 * Numbers of every kind as they occur in a vehicle, from millohms to megohms. The type asks for every kind there is, so
 * that whoever adds one says here what it looks like, and every law that draws from this table is tried on it.
 */
export const figures: { readonly [K in Kind]: fc.Arbitrary<Figures<K>> } = {
  resistor: fc.oneof(
    record({ ohms: decades(-3, 7.4) }),
    record({ ohms: decades(-3, 4), temperatureCoefficient: between(-1e-3, 5e-3), celsius }),
  ),
  voltageSource: record({ volts: between(-15, 15) }, { ohms: decades(-2, 3) }),
  currentSource: record({ amps: fc.tuple(decades(-8, -3), fc.constantFrom(1, -1)).map(([a, s]) => a * s) }),
  diode: record(
    { saturationAmps: decades(-15, -9), emission: between(1, 2) },
    {
      celsius,
      seriesOhms: decades(-2, 1),
      breakdownVolts: between(3, 40),
      breakdownEmission: between(1, 3),
    },
  ),
  switch: record({ closed: flag }, { closedOhms: decades(-3, 1), openOhms: decades(6, 12) }),
  filament: record(
    { ratedVolts: fc.constantFrom(6, 12, 13.5, 24), ratedWatts: decades(0, 2) },
    { exponent: between(0.5, 0.6), coldRatio: between(0.05, 0.1), warmUpSeconds: decades(-3, -1) },
  ),
  regulator: fc
    .tuple(
      record(
        { volts: fc.constantFrom(3.3, 5, 8), limitAmps: decades(-2, 0.5) },
        {
          dropoutVolts: between(0.05, 1.5),
          quiescentAmps: decades(-6, -2),
          outputOhms: decades(-2, 0),
          reverseOhms: decades(-1, 2),
        },
      ),
      fc.option(between(0.3, 1), { nil: undefined }),
    )
    .map(([law, share]) => (share === undefined ? law : { ...law, foldbackAmps: share * law.limitAmps })),
  controlledSource: record({
    type: fc.constantFrom("vcvs", "vccs", "ccvs", "cccs"),
    gain: between(-0.45, 0.45),
  }),
  capacitor: record({ farads: decades(-8, -4) }),
  inductor: record({ henries: decades(-5, -1) }),
  curve: fc
    .tuple(decades(-4, -1), fc.constantFrom("diode", "square", "saturating", "solar"))
    .map(([amps, shape]): Figures<"curve"> => {
      if (shape === "solar")
        return {
          active: true,
          points: [
            [-1, -amps],
            [0, -amps],
            [0.5, -0.9 * amps],
            [0.7, amps],
          ],
        };
      const volts = [-2, -1, 0, 1, 3, 12];
      const law = { square: (v: number) => v * Math.abs(v), saturating: Math.tanh, diode: Math.expm1 };
      const at = law[shape as keyof typeof law];
      return { points: volts.map((v) => [v, v === 0 ? 0 : amps * at(Math.min(v, 5))]) };
    }),
  led: record(
    { ratedVolts: between(1.7, 3.3), ratedAmps: decades(-2.5, -1) },
    { seriesOhms: between(0.5, 5), celsius: between(-20, 80), breakdownVolts: between(5, 15) },
  ),
  zener: record(
    { breakdownVolts: between(3, 20) },
    { dynamicOhms: between(5, 30), celsius: between(-20, 80), voltsPerKelvin: between(-1e-3, 1e-2) },
  ),
  driver: fc
    .tuple(
      record(
        { type: fc.constantFrom("highSide", "lowSide", "pushPull"), on: flag, onOhms: decades(-2.3, 0) },
        {
          enabled: flag,
          celsius,
          limitAmps: decades(-0.5, 1.5),
          leakAmps: decades(-8, -5),
          pullUpAmps: decades(-5, -3),
          pullDownAmps: decades(-5, -3),
          clampVolts: between(25, 50),
          blockingVolts: between(0.3, 0.8),
        },
      ),
      record({}, { tripSeconds: decades(-4, -2), retrySeconds: decades(-3, -1) }),
    )
    .map(([law, trip]) => (law.limitAmps === undefined ? law : { ...law, ...trip })),
  comparator: record(
    { thresholdVolts: between(-3, 12), hysteresisVolts: between(0.2, 1) },
    { closesBelow: flag, initiallyClosed: flag, inputOhms: decades(3, 9), closedOhms: decades(-2, 1) },
  ),
  motor: record(
    { ohms: decades(-0.7, 0.7), motorConstant: decades(-2, -1) },
    {
      inertia: decades(-5, -3),
      viscousFriction: decades(-6, -4),
      coulombFriction: decades(-4, -2),
      loadTorque: decades(-4, -1),
      loadPerSpeed: decades(-6, -4),
      loadPerSpeedSquared: decades(-8, -6),
      locked: flag,
      brushVolts: between(0, 1),
      celsius,
    },
  ),
  relay: record(
    { suppressor: fc.constantFrom("none", "resistor", "diode", "reversedDiode") },
    {
      ohms: between(60, 120),
      henries: between(0.1, 0.6),
      celsius,
      makeClosedOhms: decades(-3, 1),
      breakOpenOhms: decades(3, 12),
      heldReleased: fc.constant(true),
      operateTravelSeconds: decades(-4, -2.5),
      releaseTravelSeconds: decades(-4, -2.5),
    },
  ),
  battery: record(
    { capacityAmpereHours: between(4, 100) },
    { stateOfCharge: between(0, 1), celsius: between(-20, 40), resistanceScale: between(1, 4) },
  ),
  alternator: record(
    { radiansPerSecond: between(0, 900) },
    {
      regulatedVolts: between(13.5, 14.8),
      fieldScale: between(0, 1),
      diodeOpen: fc.constant(true),
      ratedAmps: between(60, 150),
    },
  ),
  thermistor: celsius.chain((at) =>
    fc.constantFrom<Figures<"thermistor">>(
      { celsius: at, platinumOhms: 100 },
      { celsius: at, steinhartHart: { a: 1.1e-3, b: 2.4e-4, c: 8e-8 } },
      {
        celsius: at,
        table: [
          [-20, 5e3],
          [20, 2e3],
          [80, 600],
        ],
      },
    ),
  ),
  switchingPtc: record(
    { coldOhms: decades(0, 2), switchCelsius: between(60, 160), wattsPerKelvin: decades(-3, -1) },
    { joulesPerKelvin: decades(-3, 0), ambientCelsius: between(-20, 50) },
  ),
  fuse: record(
    { type: fc.constantFrom("C", "E", "F", "bolted"), ratedAmps: fc.constantFrom(5, 10, 20, 30, 40) },
    { isBlown: flag, ambientCelsius: celsius, openOhms: decades(6, 12) },
  ),
};
