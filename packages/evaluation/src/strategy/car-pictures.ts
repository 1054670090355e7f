import { readScanTool } from "@probeworthy/instruments";
import {
  advance,
  type Fault,
  type PreparedVehicle,
  prepareVehicle,
  settle,
  startState,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import type { Situation } from "./situations";

/** What one car shows in one situation, for every test that can be made in it. */
export interface Picture {
  /** Of the points asked for, against the body, V. */
  readonly volts: Float64Array;
  /** Lamps, feel, sound. */
  readonly noticed: string;
  readonly blownFuses: readonly string[];
  readonly modules: ReadonlyMap<string, ModulePicture>;
}

export interface ModulePicture {
  readonly codes: string;
  /** Empty where it does not answer. */
  readonly values: ReadonlyMap<string, number>;
}

/** Codes have matured, s. */
const lookSeconds = 10;

/** Null where the car has no solution in that situation: no such car stands in the shop. */
export type Pictures = (faults: readonly Fault[], situation: Situation) => Picture | null;

export interface Looked {
  readonly points: readonly string[];
  readonly modules: readonly string[];
}

/**
 * Puts cars into situations and remembers what they show. Each situation is reached from a car that has just been
 * handed over in it: what earlier tests have warmed is neglected.
 */
export function createPictures(document: VehicleDocument, looked: Looked): Pictures & { solved(): number } {
  const vehicles = new Map<string, PreparedVehicle | null>();
  const known = new Map<Situation, Map<string, Picture | null>>();
  let solved = 0;
  const pictures = (faults: readonly Fault[], situation: Situation): Picture | null => {
    const key = JSON.stringify(faults);
    const inSituation = known.get(situation) ?? new Map<string, Picture | null>();
    known.set(situation, inSituation);
    const before = inSituation.get(key);
    if (before !== undefined) return before;
    let vehicle = vehicles.get(key);
    if (vehicle === undefined) {
      const prepared = prepareVehicle(document, [...faults]);
      vehicle = prepared.ok ? prepared.value : null;
      vehicles.set(key, vehicle);
    }
    solved++;
    const picture = vehicle === null ? null : look(vehicle, situation, looked);
    inSituation.set(key, picture);
    return picture;
  };
  return Object.assign(pictures, { solved: () => solved });
}

function look(vehicle: PreparedVehicle, situation: Situation, { points, modules }: Looked): Picture | null {
  const started = startState(vehicle, situation.conditions);
  if (!started.ok) return null;
  const state = advance(vehicle, started.value, lookSeconds);
  if (!state.ok) return null;
  const settled = settle(vehicle, state.value);
  if (!settled.ok) return null;
  const scans = new Map<string, ModulePicture>();
  for (const id of modules) {
    const answer = readScanTool(vehicle, state.value, id);
    if (!answer.ok) return null;
    const scan = answer.value;
    scans.set(
      id,
      scan.ok
        ? {
            codes: scan.codes
              .map(({ code }) => code)
              .sort()
              .join(),
            values: new Map(scan.values.map(({ name, value }) => [name, value])),
          }
        : { codes: scan.reason, values: new Map() },
    );
  }
  return {
    volts: Float64Array.from(points, (point) => settled.value.volts(point)),
    noticed: settled.value.symptoms.map(({ text }) => text).join("\n"),
    blownFuses: state.value.slow.blownFuses,
    modules: scans,
  };
}
