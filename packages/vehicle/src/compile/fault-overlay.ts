import type { Fault } from "../document/fault";
import type { VehicleIndex } from "../document/vehicle-index";
import { terminalsOf } from "../document/vehicle-index";
import { nodeOf, parsePoint } from "../points/point-ids";
import { err, ok, type Result } from "../result";
import type { VehicleError } from "../simulation/types";

/**
 * Resistance of a parted conductor or an empty socket, Ω. So far above the 1e-12 S leak of the solver that a floating
 * conductor reads microvolts, not half the battery.
 */
export const openOhms = 1e18;

/** Faults sorted by what they do to the network. Several faults at one place add up. */
export interface FaultOverlay {
  /** Ohms to add at a conductor, cavity contact, ground point or component terminal; `openOhms` for an open. */
  readonly series: ReadonlyMap<string, number>;
  /** Resistors between two nodes. */
  readonly shorts: readonly { readonly a: string; readonly b: string; readonly ohms: number }[];
  /** Sensor outputs by `B1:T1`: volts at a 5 V supply to add, or to stand at. */
  readonly sensorOffset: ReadonlyMap<string, number>;
  readonly sensorStuck: ReadonlyMap<string, number>;
}

type Overlay = Result<FaultOverlay, VehicleError>;

const invalid = (position: number, field: string, message: string): VehicleError => ({
  code: "invalid_fault",
  path: `faults[${position}].${field}`,
  message,
});

/** Places that can be opened or given resistance: a conductor, a cavity, a ground point, a component terminal. */
export function isSeriesPlace(at: string, index: VehicleIndex): boolean {
  if (index.conductors.has(at) || index.groundPoints.has(at)) return true;
  const [owner = "", rest] = at.split(at.includes(".") ? "." : ":");
  if (at.includes("."))
    return index.connectors.get(owner)?.cavities.some((cavity) => cavity.cavity === rest) ?? false;
  const component = index.components.get(owner);
  return component !== undefined && rest !== undefined && terminalsOf(component).includes(rest);
}

/** Sorts faults into an overlay. Errors: `invalid_fault` with the path of the place or part that does not exist. */
export function buildFaultOverlay(faults: readonly Fault[], index: VehicleIndex): Overlay {
  const series = new Map<string, number>();
  const shorts: { a: string; b: string; ohms: number }[] = [];
  const sensorOffset = new Map<string, number>();
  const sensorStuck = new Map<string, number>();
  const addSeries = (at: string, ohms: number): void => {
    series.set(at, Math.min(openOhms, (series.get(at) ?? 0) + ohms));
  };
  for (const [position, fault] of faults.entries()) {
    const error = checkFault(fault, position, index);
    if (error) return err(error);
    switch (fault.kind) {
      case "open":
        addSeries(fault.at, openOhms);
        break;
      case "seriesResistance":
        addSeries(fault.at, fault.ohms);
        break;
      case "internalOpen":
        addSeries(`${fault.component}:${fault.terminal}`, openOhms);
        break;
      case "shortToGround":
        shorts.push({ a: toNode(fault.at, index), b: "body", ohms: fault.ohms });
        break;
      case "shortToSupply":
        shorts.push({ a: toNode(fault.at, index), b: toNode(fault.supply, index), ohms: fault.ohms });
        break;
      case "shortBetween":
        shorts.push({ a: toNode(fault.at, index), b: toNode(fault.other, index), ohms: fault.ohms });
        break;
      case "sensorOffset": {
        const channel = `${fault.component}:${fault.channel}`;
        sensorOffset.set(channel, (sensorOffset.get(channel) ?? 0) + fault.volts);
        break;
      }
      case "sensorStuck":
        sensorStuck.set(`${fault.component}:${fault.channel}`, fault.volts);
        break;
      default:
        break; // fuseBlown, motorHot and weakBattery act on the state, not on the network
    }
  }
  return ok({ series, shorts, sensorOffset, sensorStuck });
}

function toNode(id: string, index: VehicleIndex): string {
  const point = parsePoint(id, index);
  if (!point) throw new Error(`unchecked point ${id}`);
  return nodeOf(point, index);
}

function checkFault(fault: Fault, position: number, index: VehicleIndex): VehicleError | undefined {
  const needPoint = (id: string, field: string): VehicleError | undefined =>
    parsePoint(id, index) ? undefined : invalid(position, field, `there is no test point ${id}`);
  switch (fault.kind) {
    case "open":
    case "seriesResistance":
      return isSeriesPlace(fault.at, index)
        ? undefined
        : invalid(position, "at", `${fault.at} is no conductor, cavity, ground point or component terminal`);
    case "shortToGround":
      return needPoint(fault.at, "at");
    case "shortToSupply":
      return needPoint(fault.at, "at") ?? needPoint(fault.supply, "supply");
    case "shortBetween":
      return needPoint(fault.at, "at") ?? needPoint(fault.other, "other");
    case "fuseBlown":
      return needKind(fault.component, "fuse", position, index);
    case "motorHot":
      return needKind(fault.component, "motor", position, index);
    case "weakBattery":
      return needKind(fault.component, "battery", position, index);
    case "internalOpen": {
      const component = index.components.get(fault.component);
      if (!component) return invalid(position, "component", `there is no component ${fault.component}`);
      return terminalsOf(component).includes(fault.terminal)
        ? undefined
        : invalid(position, "terminal", `${fault.component} has no terminal ${fault.terminal}`);
    }
    case "sensorOffset":
    case "sensorStuck": {
      const error = needKind(fault.component, "torqueSensor", position, index);
      if (error) return error;
      const sensor = index.components.get(fault.component);
      if (sensor?.kind !== "torqueSensor") return undefined;
      const { signal1, signal2 } = sensor.terminals;
      return fault.channel === signal1 || fault.channel === signal2
        ? undefined
        : invalid(position, "channel", `a channel of ${fault.component} is ${signal1} or ${signal2}`);
    }
  }
}

function needKind(
  id: string,
  kind: "fuse" | "motor" | "battery" | "torqueSensor",
  position: number,
  index: VehicleIndex,
): VehicleError | undefined {
  const words = { fuse: "fuse", motor: "motor", battery: "battery", torqueSensor: "torque sensor" };
  return index.components.get(id)?.kind === kind
    ? undefined
    : invalid(position, "component", `there is no ${words[kind]} ${id}`);
}
