import { type MeterFunction, readMeter } from "@probeworthy/instruments";
import {
  advance,
  type ConditionValues,
  changeState,
  type Fault,
  prepareVehicle,
  scan,
  settle,
  startState,
  type VehicleChange,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { expect } from "vitest";
import { must } from "../rig";

type Settlement = ReturnType<typeof settle>;
export type Settled = Extract<Settlement, { ok: true }>["value"];
type Fixtures = NonNullable<Parameters<typeof settle>[2]>;

/** One invented vehicle with its faults, under a technician's hands. */
export class Bench {
  private readonly vehicle;
  private state;

  constructor(document: VehicleDocument, faults: readonly Fault[] = [], conditions: ConditionValues = {}) {
    this.vehicle = must(prepareVehicle(document, faults));
    this.state = must(startState(this.vehicle, conditions));
  }

  do(...changes: readonly VehicleChange[]): this {
    for (const change of changes) this.state = must(changeState(this.vehicle, this.state, change));
    return this;
  }

  unplug(...connectors: readonly string[]): this {
    return this.do(...connectors.map((unplug) => ({ unplug })));
  }

  wait(seconds: number): this {
    this.state = must(advance(this.vehicle, this.state, seconds));
    return this;
  }

  get charge(): number {
    return this.state.slow.charge.G1 ?? Number.NaN;
  }

  get blownFuses(): readonly string[] {
    return this.state.slow.blownFuses;
  }

  /** The vehicle as it is, or with something a technician has connected to it. */
  with(...fixtures: Fixtures): Settled {
    return must(settle(this.vehicle, this.state, fixtures));
  }

  get now(): Settled {
    return this.with();
  }

  /** What the 10 MΩ multimeter shows, V. */
  volts(red: string, black = "G1:-"): number {
    const value = this.read("volts", red, black).value;
    if (value === null) throw new Error(`no voltage shown between ${red} and ${black}`);
    return value;
  }

  /** What the multimeter shows, Ω; null is `OL`. */
  ohms(red: string, black: string, heldRange?: string): number | null {
    return this.read("ohms", red, black, heldRange).value;
  }

  beeps(red: string, black: string): boolean {
    return this.read("continuity", red, black).sounds;
  }

  private read(meterFunction: MeterFunction, red: string, black: string, heldRange?: string) {
    const { vehicle, state } = this;
    const question = { vehicle, state, function: meterFunction, red, black, meterFuse: "good" } as const;
    return must(readMeter(heldRange === undefined ? question : { ...question, heldRange })).reading;
  }

  /** Fault codes a scan tool gets; undefined from a module that does not answer. */
  codes(module: string): readonly string[] | undefined {
    const answer = must(scan(this.vehicle, this.state, module));
    return answer.ok ? answer.codes.map(({ code }) => code) : undefined;
  }

  /** ISO 14229-1 status byte in the module's memory, whether or not a scan tool reaches it. */
  status(module: string, code: string): number {
    const byte = this.state.slow.modules[module]?.status[code];
    if (byte === undefined) throw new Error(`${module} knows no ${code}`);
    return byte;
  }

  signal(module: string, name: string): number {
    const value = this.now.modules[module]?.signals[name];
    if (value === undefined) throw new Error(`${module} works out no ${name}`);
    return value;
  }
}

/** A reading within so much of what it should be, in its own unit. */
export function near(reading: number | null, expected: number, tolerance: number): void {
  expect(reading, `expected ${expected} within ${tolerance}`).not.toBeNull();
  const difference = Math.abs((reading ?? Number.NaN) - expected);
  expect(difference, `${reading} is not ${expected} within ${tolerance}`).toBeLessThanOrEqual(tolerance);
}
