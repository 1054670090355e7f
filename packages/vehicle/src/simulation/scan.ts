import type { CircuitElement } from "@probeworthy/circuit";
import { type CompiledVehicle, requireCompiled } from "../compile/compile-vehicle";
import { addCanNode, type CanPlace } from "../compile/module/can-node";
import { statusBit, statusText } from "../diagnosis/status-byte";
import type { ComponentOf } from "../document/component";
import { err, ok, type Result } from "../result";
import { ByState } from "../settle/by-state";
import type { ModuleRun } from "../settle/module-run";
import { type Solution, solveVehicle } from "../settle/solve-vehicle";
import { average } from "../settle/time-share";
import type { PreparedVehicle, ScanAnswer, VehicleError, VehicleState } from "./types";

/** Supply a scan tool needs at the socket, V. Common practice, no source. */
const toolVolts = 8;

/**
 * Asks one module for its stored codes and live values through the diagnostic socket. The tool is a further CAN node
 * without a terminator: it needs 8 V between the socket's supply and ground, and tool and module must hear each other.
 * A module with no supply, or asleep, does not answer, whatever it remembers. Codes are those that have failed since the last clear.
 * Errors: `unknown_id` for a module the vehicle does not have; `unsolvable`.
 */
export function scan(
  vehicle: PreparedVehicle,
  state: VehicleState,
  module: string,
): Result<ScanAnswer, VehicleError> {
  const compiled = requireCompiled(vehicle);
  if (!compiled.modules.some(({ id }) => id === module))
    return err({ code: "unknown_id", path: module, message: `there is no control module ${module}` });
  const socket = compiled.document.components.find(
    (component): component is ComponentOf<"passive"> =>
      component.kind === "passive" && component.diagnosticSocket !== undefined,
  );
  const pins = socket?.diagnosticSocket;
  if (!socket || !pins)
    return ok({ ok: false, reason: "no_communication", message: "This vehicle has no diagnostic socket." });
  const node = (terminal: string): string => nodeAt(compiled, socket.id, terminal);
  const place: CanPlace = {
    id: "scanTool",
    high: node(pins.canHigh),
    low: node(pins.canLow),
    ground: node(pins.ground),
  };
  const extra: CircuitElement[] = [];
  addCanNode(place, { add: (element) => extra.push(element) });
  const solution =
    known.get(compiled, state) ??
    known.set(compiled, state, solveVehicle(compiled, state, { extra, tool: place }));
  if (!solution.ok) return solution;
  const { shares, runs, tool } = solution.value;
  const supply = average(shares, (point) => point.volts(node(pins.supply)) - point.volts(place.ground));
  if (supply < toolVolts)
    return ok({
      ok: false,
      reason: "no_power_at_socket",
      message: "The scan tool does not switch on: no supply at the diagnostic socket.",
    });
  const run = runs.find((entry) => entry.module.id === module);
  if (!run?.awake || !tool.get(module))
    return ok({ ok: false, reason: "no_communication", message: `${module} does not answer.` });
  return ok(readAnswer(run));
}

/** The tool listens to the whole network at once: asking a second module of one state costs nothing. */
const known = new ByState<Result<Solution, VehicleError>>();

function nodeAt(compiled: CompiledVehicle, component: string, terminal: string): string {
  const inner = `${component}:${terminal}#inside`;
  return compiled.nodes.has(inner) ? inner : `${component}:${terminal}`;
}

function readAnswer(run: ModuleRun): ScanAnswer {
  const { component, scanValues } = run.module;
  const codes = (component.monitors ?? []).flatMap(({ code, text }) => {
    const status = run.memory?.status[code] ?? 0;
    return (status & statusBit.testFailedSinceLastClear) === 0
      ? []
      : [{ code, text, status, statusText: statusText(status) }];
  });
  const values = (component.scanValues ?? []).map(({ name, title, unit, decimals }, position) => {
    const law = scanValues[position];
    const value = law?.stuckAt ?? (law?.value(run.readings) ?? 0) + (law?.wrongBy ?? 0);
    const text = value.toFixed(decimals);
    return {
      name,
      title,
      unit,
      value: Number(text),
      text: Number(text) === 0 ? text.replace("-", "") : text,
    };
  });
  return { ok: true, codes, values };
}
