import type { ControlModule } from "../../document/module";
import { openOhms } from "../fault-overlay";
import type { ElementSetter, NetworkBuilder } from "../network-builder";

/**
 * Levels of a CAN transceiver (ISO 11898-2). A powered node holds both wires at 2.5 V against its own ground through
 * 30 kΩ each (from memory; 15 to 50 kΩ are usual). Talking, it drives CANH from 5 V and CANL from 0 V through 45 Ω
 * each, so that 60 Ω between the wires carry (5 − 0)/(45 + 60 + 45) A = 33.3 mA: 3.5 V and 1.5 V, 2 V apart. A shorted
 * wire then takes 111 mA, about what real drivers limit to. Without supply, and asleep, the node leaks through 1 MΩ.
 */
export const can = {
  recessiveVolts: 2.5,
  biasOhms: 30_000,
  driveHighVolts: 5,
  driveLowVolts: 0,
  driveOhms: 45,
  leakOhms: 1e6,
} as const;

/** Where a node of the two-wire bus touches the harness. */
export interface CanPlace {
  readonly id: string;
  readonly high: string;
  readonly low: string;
  readonly ground: string;
}

export function compileCan(
  module: ControlModule,
  ground: string,
  builder: NetworkBuilder,
): CanPlace | undefined {
  const { id, bus } = module;
  if (!bus) return undefined;
  const place = { id, high: builder.inside(id, bus.canHigh), low: builder.inside(id, bus.canLow), ground };
  if (bus.terminationOhms !== undefined) {
    const element = `${id}#termination`;
    const ohms = Math.min(openOhms, builder.overlay.terminators.get(id) ?? bus.terminationOhms);
    builder.resistor(element, place.high, place.low, bus.terminationOhms);
    builder.update((_, set) => set.ohms(element, ohms));
  }
  addCanNode(place, builder);
  return place;
}

/** Bias and driver of one CAN node, without supply. */
export function addCanNode({ id, high, low, ground }: CanPlace, builder: Pick<NetworkBuilder, "add">): void {
  const source = (name: string, wire: string, ohms: number): void =>
    builder.add({
      kind: "voltageSource",
      id: `${id}#${name}`,
      positive: wire,
      negative: ground,
      volts: 0,
      ohms,
    });
  source("biasHigh", high, can.leakOhms);
  source("biasLow", low, can.leakOhms);
  source("driveHigh", high, openOhms);
  source("driveLow", low, openOhms);
}

export function writeCanBias(id: string, awake: boolean, set: ElementSetter): void {
  for (const wire of ["biasHigh", "biasLow"]) {
    set.volts(`${id}#${wire}`, awake ? can.recessiveVolts : 0);
    set.ohms(`${id}#${wire}`, awake ? can.biasOhms : can.leakOhms);
  }
}

export function writeCanDrive(id: string, dominant: boolean, set: ElementSetter): void {
  set.volts(`${id}#driveHigh`, dominant ? can.driveHighVolts : 0);
  set.volts(`${id}#driveLow`, can.driveLowVolts);
  for (const wire of ["driveHigh", "driveLow"])
    set.ohms(`${id}#${wire}`, dominant ? can.driveOhms : openOhms);
}
