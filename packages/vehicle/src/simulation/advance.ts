import { advanceMotorHeat, fuseCoolingSeconds, fuseOpeningSeconds } from "@probeworthy/circuit";
import { type CompiledVehicle, requireCompiled } from "../compile/compile-vehicle";
import { copperOhmsAt } from "../physics/copper";
import { ok, type Result } from "../result";
import { solveAtRest, stateAtRest } from "../settle/solve-at-rest";
import type { Solution } from "../settle/solve-vehicle";
import { average } from "../settle/time-share";
import { ambientCelsius, conditionNumber, isKeyOff } from "../settle/world";
import { advanceModule, fastestEstimate, secondsToMaturity, secondsToSleep } from "./advance-modules";
import { roundStored } from "./round";
import type { PreparedVehicle, SlowState, VehicleError, VehicleState } from "./types";

/** No temperature that the circuit or a law may follow changes by more than this in one step, K … */
const kelvinPerStep = 4;
/** … nor a state of charge by more than this … */
const chargePerStep = 0.01;
/** … unless the step would be shorter than this, s, or than a four-hundredth of the whole time. */
const shortestStep = 0.25;

/**
 * Lets time pass with nothing touched: windings warm and cool (two-node heat), modules' own temperature estimates
 * follow, overloaded fuses open, monitors mature, modules fall asleep, the battery charges or empties. Steps end exactly where a
 * fuse opens, a code matures or a module falls asleep; between, losses are constant and every exponential is exact.
 * Errors: those of `settle`. `seconds` ≥ 0; 0 refreshes which modules are powered and changes nothing else.
 */
export function advance(
  vehicle: PreparedVehicle,
  state: VehicleState,
  seconds: number,
): Result<VehicleState, VehicleError> {
  if (!(seconds >= 0 && Number.isFinite(seconds)))
    throw new RangeError(`cannot advance by ${seconds} seconds`);
  const compiled = requireCompiled(vehicle);
  const floor = Math.max(shortestStep, seconds / 400);
  let now = state;
  let left = seconds;
  while (left > 1e-9) {
    const solution = solveAtRest(compiled, now);
    if (!solution.ok) return solution;
    const rates = measure(compiled, now, solution.value);
    const keyOff = isKeyOff(now, compiled);
    const smooth = Math.max(floor, smoothStep(compiled, rates, solution.value));
    const events = [
      left,
      smooth,
      ...solution.value.runs.map((run) => secondsToMaturity(run, keyOff)),
      ...solution.value.runs.map(secondsToSleep),
      ...compiled.fuses.map((fuse) => secondsToOpen(fuse.id, now, rates)),
    ];
    const step = Math.min(...events);
    now = { ...now, slow: takeStep(compiled, now, solution.value, rates, step) };
    left -= step;
  }
  const last = solveAtRest(compiled, now);
  return last.ok ? ok(stateAtRest(compiled, now, last.value)) : last;
}

/** Currents and losses at one instant, constant over a step. */
interface Rates {
  readonly ambient: ReadonlyMap<string, number>;
  readonly watts: ReadonlyMap<string, number>;
  readonly batteryAmps: ReadonlyMap<string, number>;
  /** Opening time of each fuse at its present current, s. */
  readonly openingSeconds: ReadonlyMap<string, number>;
}

function measure(compiled: CompiledVehicle, state: VehicleState, { shares }: Solution): Rates {
  const amps = (id: string): number => average(shares, (point) => point.amps(id));
  const watts = (id: string, ohmsAt20: number): number =>
    amps(id) ** 2 * copperOhmsAt(ohmsAt20, state.slow.motors[id]?.winding ?? 20);
  return {
    ambient: new Map(
      compiled.motors.map(({ id, heat }) => [
        id,
        heat ? conditionNumber(heat.ambientCondition, state, compiled) : ambientCelsius(state, compiled),
      ]),
    ),
    watts: new Map(compiled.motorParts.map(({ id, windingOhmsAt20 }) => [id, watts(id, windingOhmsAt20)])),
    batteryAmps: new Map(compiled.batteries.map(({ id }) => [id, -amps(id)])),
    openingSeconds: new Map(
      compiled.fuses.map(({ id, form, ratingAmps }) => [
        id,
        fuseOpeningSeconds(form, compiled.fuseRatings.get(id) ?? ratingAmps, amps(id)),
      ]),
    ),
  };
}

function smoothStep(compiled: CompiledVehicle, rates: Rates, solution: Solution): number {
  const kelvinRates = solution.runs.map(fastestEstimate);
  for (const { id, heat } of compiled.motors) {
    // Only a winding that carries current feeds its temperature back into the circuit.
    const watts = rates.watts.get(id) ?? 0;
    if (heat && watts > 0.1) kelvinRates.push(watts / heat.windingCapacity);
  }
  const chargeRates = compiled.batteries.map(
    ({ id, capacityAmpereHours }) => Math.abs(rates.batteryAmps.get(id) ?? 0) / (capacityAmpereHours * 3600),
  );
  return Math.min(
    ...kelvinRates.map((rate) => kelvinPerStep / rate),
    ...chargeRates.map((rate) => chargePerStep / rate),
    Number.MAX_VALUE,
  );
}

const secondsToOpen = (fuse: string, state: VehicleState, rates: Rates): number =>
  state.slow.blownFuses.includes(fuse)
    ? Number.POSITIVE_INFINITY
    : (1 - (state.slow.fuseHeat?.[fuse] ?? 0)) * (rates.openingSeconds.get(fuse) ?? Number.POSITIVE_INFINITY);

function takeStep(
  compiled: CompiledVehicle,
  state: VehicleState,
  solution: Solution,
  rates: Rates,
  seconds: number,
): SlowState {
  const { slow } = state;
  const keyOff = isKeyOff(state, compiled);
  const fuses = advanceFuses(compiled, slow, rates, seconds);
  const ambient = ambientCelsius(state, compiled);
  const { fuseHeat: _, pulledIn: __, ...rest } = slow;
  return {
    ...rest,
    ...(solution.pulledIn.length > 0 ? { pulledIn: solution.pulledIn } : {}),
    seconds: roundStored(slow.seconds + seconds),
    motors: Object.fromEntries(
      compiled.motors.map(({ id, heat }) => {
        const from = slow.motors[id] ?? { winding: ambient, housing: ambient };
        // A motor without figures for its heat stays at the temperature around it.
        if (!heat) return [id, { winding: ambient, housing: ambient }];
        const next = advanceMotorHeat(
          heat,
          from,
          rates.watts.get(id) ?? 0,
          rates.ambient.get(id) ?? 20,
          seconds,
        );
        return [id, { winding: roundStored(next.winding), housing: roundStored(next.housing) }];
      }),
    ),
    charge: Object.fromEntries(
      compiled.batteries.map(({ id, capacityAmpereHours, stateOfCharge }) => {
        const used = ((rates.batteryAmps.get(id) ?? 0) * seconds) / (capacityAmpereHours * 3600);
        const charge = (slow.charge[id] ?? stateOfCharge) - used;
        return [id, roundStored(Math.min(1, Math.max(0, charge)))];
      }),
    ),
    blownFuses: fuses.blown,
    ...(Object.keys(fuses.heat).length > 0 ? { fuseHeat: fuses.heat } : {}),
    modules: Object.fromEntries(
      solution.runs.map((run) => [run.module.id, advanceModule(run, keyOff, seconds)]),
    ),
  };
}

/**
 * Each overloaded fuse comes nearer to opening by seconds / (opening time at this current) and opens at 1; one that
 * carries no more than 110 % cools back.
 */
function advanceFuses(
  compiled: CompiledVehicle,
  slow: SlowState,
  rates: Rates,
  seconds: number,
): { readonly blown: readonly string[]; readonly heat: Readonly<Record<string, number>> } {
  const blown = new Set(slow.blownFuses);
  const heat: Record<string, number> = {};
  for (const { id } of compiled.fuses) {
    if (blown.has(id)) continue;
    const before = slow.fuseHeat?.[id] ?? 0;
    const time = rates.openingSeconds.get(id) ?? Number.POSITIVE_INFINITY;
    const after = Number.isFinite(time)
      ? before + seconds / time
      : before * Math.exp(-seconds / fuseCoolingSeconds);
    if (after >= 1 - 1e-9) blown.add(id);
    else if (after > 1e-6) heat[id] = roundStored(after);
  }
  return { blown: [...blown].sort(), heat };
}
