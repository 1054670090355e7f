import type { ScenarioDocument } from "@probeworthy/evaluation";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import {
  advance,
  type ChartValue,
  type ConditionValues,
  type Fault,
  type PreparedVehicle,
  prepareVehicle,
  type Settled,
  settle,
  startState,
  statusBit,
  terminalChart,
  testPoints,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { concrete, type Severity } from "./supplied-faults";
import { cranking, idling, keyOff, keyOn, must, turning } from "./test-drive";

type Cause = ScenarioDocument["pool"][number];

/** Conditions in which a car is tried, and how long it is left in them. */
interface Trial {
  readonly conditions: ConditionValues;
  readonly seconds: number;
}

/** Long enough for every code of this car to mature. */
const toMaturity = 10;
/** Long enough for every module to have fallen asleep. */
const toSleep = 1200;

const trial = (conditions: ConditionValues, seconds = toMaturity): Trial => ({ conditions, seconds });
const driving: ConditionValues = { ...idling, engineSpeed: 3000, roadSpeed: 80, accelerator: 60 };
/** As much as this car can ask of its alternator. */
const everyLoad: ConditionValues = {
  lightSwitch: "dipped",
  blowerStage: "four",
  wiperStage: "fast",
  coolantTemperature: 112,
};
const night: ConditionValues = { ...idling, lightSwitch: "side" };
const windowHalf: ConditionValues = { ...idling, windowPosition: 50 };

/** What a technician would let each system do before believing that nothing is wrong with it. */
const trialsOf: Readonly<Record<string, readonly Trial[]>> = {
  "power-steering": [trial(turning(6))],
  "starting-and-charging": [
    trial(cranking),
    trial(keyOn),
    trial({ ...idling, engineSpeed: 1500, ...everyLoad }),
  ],
  "exterior-lighting": [
    trial({ ...night, brakePedal: "pressed", trailer: "coupled" }),
    trial(night),
    trial({ ...idling, lightSwitch: "dipped", indicator: "hazard" }),
  ],
  "indicators-and-horn": [trial({ ...idling, indicator: "hazard", horn: "pressed" }), trial(idling)],
  "radiator-fan": [
    trial({ ...idling, coolantTemperature: 112 }),
    trial({ ...idling, coolantTemperature: 96 }),
    trial(idling),
  ],
  "fuel-pump": [trial(idling), trial(cranking), trial(driving), trial(keyOn)],
  "pedal-and-throttle": [trial({ ...idling, accelerator: 100 }), trial(idling)],
  "engine-temperature": [trial({ ...idling, coolantTemperature: 90 })],
  "wheel-speed": [trial({ ...idling, engineSpeed: 1500, roadSpeed: 40 })],
  "data-network": [trial({ ...idling, engineSpeed: 1500, roadSpeed: 40 })],
  blower: [trial({ ...idling, blowerStage: "four" }), trial({ ...idling, blowerStage: "two" })],
  "wiper-and-window": [
    trial({ ...windowHalf, windowSwitch: "up", wiperStage: "slow" }),
    trial({ ...windowHalf, windowSwitch: "down", wiperStage: "fast" }),
  ],
};

/** Conditions in which a cause is tried: the scenario's own, its system's, and that in which an intermittent comes. */
function trialsFor(scenario: ScenarioDocument, cause: Cause): readonly Trial[] {
  const system = trialsOf[scenario.system] ?? [trial(idling)];
  const start = trial({ ...keyOff, ...scenario.startConditions });
  const moved = cause.faults.flatMap((template) => {
    const fault = concrete(template, "mild");
    if (fault.kind !== "intermittent" || fault.is === undefined) return [];
    const { condition, is } = fault;
    return system.map(({ conditions }) => trial({ ...conditions, [condition]: is }));
  });
  const asleep = cause.normal || moved.length > 0 || scenario.startConditions.key !== "off";
  return [...system, ...moved, ...(asleep ? [start] : [trial(start.conditions, toSleep)])];
}

interface Seen {
  readonly symptoms: ReadonlyMap<string, { readonly text: string; readonly normal: boolean }>;
  /** Codes that have failed, with their module. */
  readonly codes: readonly string[];
  readonly now: Settled;
}

/** One car, handed over in each condition anew, so that no trial depends on the order; trials are made once. */
class Car {
  readonly vehicle: PreparedVehicle;
  private readonly made = new Map<string, Seen>();

  constructor(readonly faults: readonly Fault[] = []) {
    this.vehicle = must(prepareVehicle(car, faults));
  }

  try({ conditions, seconds }: Trial): Seen {
    const key = JSON.stringify([Object.entries(conditions).sort(), seconds]);
    const known = this.made.get(key);
    if (known) return known;
    const state = must(advance(this.vehicle, must(startState(this.vehicle, conditions)), seconds));
    const now = must(settle(this.vehicle, state));
    const seen: Seen = {
      symptoms: new Map(now.symptoms.map(({ id, text, normal }) => [id, { text, normal }])),
      codes: Object.entries(state.slow.modules).flatMap(([module, { status }]) =>
        Object.entries(status).flatMap(([code, bits]) =>
          (bits & statusBit.testFailedSinceLastClear) === 0 ? [] : [`${module} ${code}`],
        ),
      ),
      now,
    };
    this.made.set(key, seen);
    return seen;
  }

  /** What the ohms of a system's terminal chart read. */
  ohms(system: string): readonly ChartValue[] {
    return must(terminalChart(this.vehicle, system));
  }
}

/** The car with the ohm rows of its terminal charts only: the others are read in the trials. */
const car: VehicleDocument = {
  ...trainingVehicle,
  systems: trainingVehicle.systems.map((system) => ({
    ...system,
    chart: system.chart.filter(({ quantity }) => quantity === "ohms"),
  })),
};
const healthy = new Car();
const points = testPoints(healthy.vehicle, must(startState(healthy.vehicle, keyOff)))
  .filter(({ accessible }) => accessible)
  .map(({ id }) => id);
const carriers = trainingVehicle.conductors.map(({ id }) => id);

export interface Evidence {
  /** What somebody who uses the car sees, hears and feels, in the trials of the system. */
  readonly symptoms: readonly string[];
  readonly codes: readonly string[];
  /** Voltages to battery negative that differ by more than 0.03 V + 1 %: no workshop meter leaves a doubt. */
  readonly volts: readonly string[];
  /** Currents that differ by more than a clamp's 0.05 A + 5 %. */
  readonly amps: readonly string[];
  /** The rest current is more than 20 mA off: the customer notices it as a flat battery. */
  readonly drains: boolean;
  /** Ohm rows of the system's chart that differ by more than 0.5 Ω + 5 %; looked at only when nothing else differs. */
  readonly ohms: readonly string[];
}

const differs = (value: number, good: number, least: number, share: number): boolean =>
  value !== good && !(Math.abs(value - good) <= least + share * Math.abs(good));

/** What a car with this cause shows that the healthy car does not, in the trials a technician would make. */
export function evidenceOf(scenario: ScenarioDocument, cause: Cause, severity: Severity): Evidence {
  const faulted = new Car(cause.faults.map((template) => concrete(template, severity)));
  const symptoms = new Set<string>();
  const codes = new Set<string>();
  const volts: string[] = [];
  const amps: string[] = [];
  let drains = false;
  trialsFor(scenario, cause).forEach((made, position) => {
    const [bad, good] = [faulted.try(made), healthy.try(made)];
    for (const [id, { text }] of bad.symptoms)
      if (good.symptoms.get(id)?.text !== text) symptoms.add(`${id}: ${text}`);
    for (const code of bad.codes) if (!good.codes.includes(code)) codes.add(code);
    for (const point of points) {
      const [found = 0, expected = 0] = [bad, good].map(({ now }) => now.volts(point) - now.volts("G1:-"));
      if (differs(found, expected, 0.03, 0.01)) volts.push(`${position} ${point}`);
    }
    for (const carrier of carriers)
      if (differs(bad.now.amps(carrier), good.now.amps(carrier), 0.05, 0.05))
        amps.push(`${position} ${carrier}`);
    if (made.seconds === toSleep) drains = differs(bad.now.amps("G1"), good.now.amps("G1"), 0.02, 0);
  });
  const isSeen = volts.length + amps.length > 0 || cause.normal === true;
  const ohms = isSeen ? [] : differingOhms(faulted, scenario.system);
  return { symptoms: [...symptoms], codes: [...codes], volts, amps, drains, ohms };
}

/** Abnormal symptoms and codes of the healthy car in the trials of a scenario: there must be none. */
export function healthyShows(scenario: ScenarioDocument): readonly string[] {
  return scenario.pool.flatMap((cause) =>
    trialsFor(scenario, cause).flatMap((made) => {
      const { symptoms, codes } = healthy.try(made);
      const abnormal = [...symptoms].flatMap(([id, { text, normal }]) => (normal ? [] : [`${id}: ${text}`]));
      return [...abnormal, ...codes];
    }),
  );
}

function differingOhms(faulted: Car, system: string): string[] {
  const good = healthy.ohms(system);
  return faulted
    .ohms(system)
    .flatMap(({ row, value }, at) =>
      differs(value, good[at]?.value ?? 0, 0.5, 0.05) ? [`${row.function}: ${value} Ω`] : [],
    );
}
