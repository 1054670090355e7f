import type { ControlModule } from "../../document/module";
import { openOhms } from "../fault-overlay";
import type { ElementSetter, NetworkBuilder } from "../network-builder";

/**
 * One node of a LIN (ISO 17987): the wire is pulled up to the node's own supply through a diode, in the master with
 * 1 kΩ and in a slave with 30 kΩ, and pulled down to its own ground while it sends a dominant bit. The 40 Ω of that
 * transistor are common practice, no source.
 */
export const lin = { masterOhms: 1000, slaveOhms: 30_000, driveOhms: 40 } as const;

/** Where a node of the one-wire bus touches the harness, and what its receiver compares the wire with. */
export interface LinPlace {
  readonly id: string;
  readonly wire: string;
  readonly supply: string;
  readonly ground: string;
  readonly master: boolean;
}

export function compileLin(
  module: ControlModule,
  supply: string,
  ground: string,
  builder: NetworkBuilder,
): LinPlace | undefined {
  const { id, lin: port } = module;
  if (!port) return undefined;
  const wire = builder.inside(id, port.terminal);
  const master = port.role === "master";
  const middle = builder.node(`${id}#linPull`);
  builder.add({ kind: "diode", id: `${id}#linDiode`, anode: supply, cathode: middle });
  builder.resistor(`${id}#linPullUp`, middle, wire, master ? lin.masterOhms : lin.slaveOhms);
  builder.resistor(`${id}#linDrive`, wire, ground, openOhms);
  return { id, wire, supply, ground, master };
}

export const writeLinDrive = (id: string, dominant: boolean, set: ElementSetter): void =>
  set.ohms(`${id}#linDrive`, dominant ? lin.driveOhms : openOhms);
