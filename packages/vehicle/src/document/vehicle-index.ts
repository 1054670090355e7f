import type { Component, ComponentOf } from "./component";
import type { ConditionDefinition } from "./condition";
import type { Conductor, Connector, VehicleDocument } from "./vehicle-document";

type GroundPoint = VehicleDocument["groundPoints"][number];
type Splice = VehicleDocument["splices"][number];

/** Look-ups by designator over one document. Built once and shared; holds no state of its own. */
export interface VehicleIndex {
  readonly components: ReadonlyMap<string, Component>;
  readonly connectors: ReadonlyMap<string, Connector>;
  readonly conductors: ReadonlyMap<string, Conductor>;
  readonly groundPoints: ReadonlyMap<string, GroundPoint>;
  readonly splices: ReadonlyMap<string, Splice>;
  readonly conditions: ReadonlyMap<string, ConditionDefinition>;
  /** Conductors by the point they end at. */
  readonly conductorsAt: ReadonlyMap<string, readonly Conductor[]>;
}

/** A relay's terminal names: its own, or those of DIN 72552. */
export function relayTerminals(relay: ComponentOf<"relay">): NonNullable<ComponentOf<"relay">["terminals"]> {
  if (relay.terminals) return relay.terminals;
  const names = { coilPlus: "86", coilMinus: "85", common: "30", make: "87" };
  return relay.contact === "changeOver" ? { ...names, break: "87a" } : names;
}

/** Terminal names of a component, in the order of its data sheet. */
export function terminalsOf(component: Component): readonly string[] {
  switch (component.kind) {
    case "battery":
      return ["+", "-"];
    case "chargingSource":
      return [
        "B+",
        "31",
        ...(component.sense === "wire" ? ["S"] : []),
        ...(component.lampOhms === undefined ? [] : ["D+"]),
      ];
    case "fuse":
    case "resistor":
    case "lamp":
    case "ledLamp":
    case "activeSpeedSensor":
    case "passiveSpeedSensor":
    case "diode":
    case "motor":
    case "thermistor":
      return ["1", "2"];
    case "switch":
    case "composed":
    case "passive":
      return component.terminals;
    case "relay": {
      const { coilPlus, coilMinus, common, make, break: rest } = relayTerminals(component);
      return [coilMinus, coilPlus, common, make, ...(rest === undefined ? [] : [rest])];
    }
    case "twoFilamentLamp": {
      const { common, first, second } = component.terminals;
      return [common, first, second];
    }
    case "positionSensor":
      return [...new Set(component.tracks.flatMap(({ supply, ground, signal }) => [supply, ground, signal]))];
    case "torqueSensor": {
      const { supply, ground, signal1, signal2 } = component.terminals;
      return [supply, ground, signal1, signal2];
    }
    case "module":
      return component.terminals.map((terminal) => terminal.name);
  }
}

/** The point a conductor end touches: `X2.5` → `X2.5:h`, `X7.2/b` → `X7.2:b`, `XE1` → `XE1:ring`, others unchanged. */
export function endToPoint(end: string, groundPoints: ReadonlyMap<string, unknown>): string {
  if (end.includes(".")) return end.endsWith("/b") ? `${end.slice(0, -2)}:b` : `${end}:h`;
  return groundPoints.has(end) ? `${end}:ring` : end;
}

const byId = <T extends { id: string }>(items: readonly T[]): Map<string, T> =>
  new Map(items.map((item) => [item.id, item]));

export function createVehicleIndex(document: VehicleDocument): VehicleIndex {
  const groundPoints = byId(document.groundPoints);
  const conductorsAt = new Map<string, Conductor[]>();
  for (const conductor of document.conductors) {
    for (const end of [conductor.from, conductor.to]) {
      const point = endToPoint(end, groundPoints);
      const list = conductorsAt.get(point);
      if (list) list.push(conductor);
      else conductorsAt.set(point, [conductor]);
    }
  }
  return {
    components: byId(document.components),
    connectors: byId(document.connectors),
    conductors: byId(document.conductors),
    groundPoints,
    splices: byId(document.splices),
    conditions: new Map(document.conditions.map((condition) => [condition.name, condition])),
    conductorsAt,
  };
}
