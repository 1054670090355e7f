import type { Component } from "../document/component";
import { compileComposed } from "./components/composed";
import { compileLamp, compileLedLamp, compileTwoFilamentLamp } from "./components/lamps";
import { type CompiledMotor, compileMotor } from "./components/motor";
import { type CompiledRelay, compileRelay } from "./components/relay";
import {
  type CompiledPulser,
  compileActiveSpeedSensor,
  compilePassiveSpeedSensor,
  compilePositionSensor,
  compileThermistor,
  compileTorqueSensor,
} from "./components/sensors";
import {
  type CompiledAlternator,
  compileBattery,
  compileChargingSource,
  compileFuse,
} from "./components/supply";
import { compileSwitch } from "./components/switch";
import { openOhms } from "./fault-overlay";
import type { NetworkBuilder } from "./network-builder";

/** What the settle has to know of components that do more than conduct. */
export interface CompiledParts {
  readonly relays: CompiledRelay[];
  readonly motorParts: CompiledMotor[];
  readonly pulsers: CompiledPulser[];
  readonly alternators: CompiledAlternator[];
}

/** Elements of every component but control modules. The element that carries a component's current has its id. */
export function compileComponent(component: Component, builder: NetworkBuilder, parts: CompiledParts): void {
  const { id } = component;
  const inside = (terminal: string): string => builder.inside(id, terminal);
  switch (component.kind) {
    case "battery":
      compileBattery(component, builder);
      break;
    case "chargingSource": {
      const alternator = compileChargingSource(component, builder);
      if (alternator) parts.alternators.push(alternator);
      break;
    }
    case "fuse":
      compileFuse(component, builder);
      break;
    case "switch":
      compileSwitch(component, builder);
      break;
    case "relay":
      parts.relays.push(compileRelay(component, builder));
      break;
    case "resistor": {
      const ohms = Math.min(openOhms, builder.overlay.terminators.get(id) ?? component.ohms);
      builder.resistor(id, inside("1"), inside("2"), component.ohms);
      builder.update((_, set) => set.ohms(id, ohms));
      break;
    }
    case "lamp":
      compileLamp(component, builder);
      break;
    case "twoFilamentLamp":
      compileTwoFilamentLamp(component, builder);
      break;
    case "ledLamp":
      compileLedLamp(component, builder);
      break;
    case "diode":
      builder.add({
        kind: "diode",
        id,
        anode: inside("1"),
        cathode: inside("2"),
        ...(component.breakdownVolts === undefined ? {} : { breakdownVolts: component.breakdownVolts }),
      });
      break;
    case "motor":
      parts.motorParts.push(compileMotor(component, builder));
      break;
    case "torqueSensor":
      compileTorqueSensor(component, builder);
      break;
    case "positionSensor":
      compilePositionSensor(component, builder);
      break;
    case "activeSpeedSensor":
      parts.pulsers.push(compileActiveSpeedSensor(component, builder));
      break;
    case "passiveSpeedSensor":
      parts.pulsers.push(compilePassiveSpeedSensor(component, builder));
      break;
    case "thermistor":
      compileThermistor(component, builder);
      break;
    case "composed":
      compileComposed(component, builder);
      break;
    case "passive":
      for (const terminal of component.terminals) inside(terminal);
      break;
    case "module":
      break;
  }
  for (const [position, short] of (builder.overlay.internalShorts.get(id) ?? []).entries())
    builder.faultResistor(`${id}#short${position}`, inside(short.terminal), inside(short.other), short.ohms);
}
