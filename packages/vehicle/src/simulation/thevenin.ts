import type { PrimitiveElement } from "@probeworthy/circuit";
import { requireCompiled } from "../compile/compile-vehicle";
import { parsePoint } from "../points/point-ids";
import { err, ok, type Result } from "../result";
import { settle } from "./settle";
import type { PreparedVehicle, VehicleError, VehicleState } from "./types";

export interface Thevenin {
  /** Volts of `a` above `b` with nothing connected, V. */
  readonly openVolts: number;
  /** Source resistance between them for a small change of current, Ω; `Infinity` when nothing joins them. */
  readonly sourceOhms: number;
}

/** Lies across the points while they are probed, so that even two floating ones carry the probing current, Ω. */
const bridgeOhms = 1e11;
/** From here on only the solver's own leak on floating nodes joins the points: they are open, Ω. */
const openFrom = 1e10;
/** The points are moved by about this much, so that lamps, regulators and modules keep their state, V. */
const probeVolts = 0.001;

/**
 * Thévenin's equivalent between two points: the open-circuit volts, and ΔV/ΔI for a current pushed out of `b` into `a`
 * that moves them by about a millivolt. Errors: `unknown_point`, `unsolvable`.
 */
export function thevenin(
  vehicle: PreparedVehicle,
  state: VehicleState,
  a: string,
  b: string,
): Result<Thevenin, VehicleError> {
  const { index } = requireCompiled(vehicle);
  for (const point of [a, b])
    if (!parsePoint(point, index))
      return err({ code: "unknown_point", path: point, message: `there is no test point ${point}` });
  if (a === b) return ok({ openVolts: 0, sourceOhms: 0 });
  const open = settle(vehicle, state);
  if (!open.ok) return open;
  const openVolts = open.value.volts(a) - open.value.volts(b);
  const rest = probe(vehicle, state, a, b, 0);
  if (!rest.ok) return rest;
  let sourceOhms = Number.POSITIVE_INFINITY;
  // First with a nanoamp to learn the size, then with the current that gives about a millivolt.
  for (let amps = 1e-9, round = 0; round < 3; round++) {
    const moved = probe(vehicle, state, a, b, amps);
    if (!moved.ok) return moved;
    const seen = Math.max(1e-12, (moved.value - rest.value) / amps);
    const behind = seen >= bridgeOhms ? bridgeOhms : 1 / (1 / seen - 1 / bridgeOhms);
    sourceOhms = behind >= openFrom ? Number.POSITIVE_INFINITY : behind;
    amps = Math.min(1, probeVolts / seen);
  }
  return ok({ openVolts, sourceOhms });
}

function probe(
  vehicle: PreparedVehicle,
  state: VehicleState,
  a: string,
  b: string,
  amps: number,
): Result<number, VehicleError> {
  const fixtures: PrimitiveElement[] = [
    { kind: "resistor", id: "probe#bridge", a, b, ohms: bridgeOhms },
    { kind: "currentSource", id: "probe#source", from: b, to: a, amps },
  ];
  const settled = settle(vehicle, state, fixtures);
  return settled.ok ? ok(settled.value.volts(a) - settled.value.volts(b)) : settled;
}
