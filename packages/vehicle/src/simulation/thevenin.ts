import { requireCompiled } from "../compile/compile-vehicle";
import { ok, type Result } from "../result";
import { mapPoints } from "../settle/map-fixtures";
import { sourceBetween } from "../settle/source-between";
import { settle } from "./settle";
import type { PreparedVehicle, VehicleError, VehicleState } from "./types";

export interface Thevenin {
  /** Volts of `a` above `b` with nothing connected, V. */
  readonly openVolts: number;
  /** Source resistance between them for a small change of current, Ω; `Infinity` when nothing joins them. */
  readonly sourceOhms: number;
}

/** From here on only leaks join the points: they are open, Ω. */
const openFrom = 1e10;

/**
 * Thévenin's equivalent between two points of a settled vehicle: the open-circuit volts, and ΔV/ΔI for a small current
 * pushed out of `b` into `a`. What a control module would do about the change of its voltages is no part of it: a
 * bridge counts with the duty it stands at, not as the current source its regulator makes of it, for a resistance that
 * is regulated away would say nothing of the harness. Both figures are averages over the states of the bus.
 * Errors: `unknown_point`, `unsolvable`.
 */
export function thevenin(
  vehicle: PreparedVehicle,
  state: VehicleState,
  a: string,
  b: string,
): Result<Thevenin, VehicleError> {
  const compiled = requireCompiled(vehicle);
  const mapped = mapPoints(compiled, state, [a, b]);
  if (!mapped.ok) return mapped;
  const { nodes, extra } = mapped.value;
  if (nodes[0] === nodes[1]) return ok({ openVolts: 0, sourceOhms: 0 });
  const added = extra.flatMap((element) => (element.kind === "resistor" ? [element.a, element.b] : []));
  if (nodes.some((node) => !compiled.nodes.has(node) && !added.includes(node))) {
    // A cavity that no conductor and no component ties to anything.
    const open = settle(vehicle, state);
    return open.ok
      ? ok({ openVolts: open.value.volts(a) - open.value.volts(b), sourceOhms: Number.POSITIVE_INFINITY })
      : open;
  }
  const source = sourceBetween(compiled, state, extra, nodes);
  if (!source.ok) return source;
  const { openVolts, ohms } = source.value;
  return ok({ openVolts, sourceOhms: ohms >= openFrom ? Number.POSITIVE_INFINITY : ohms });
}
