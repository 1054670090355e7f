import type { VehicleDocument } from "../document/vehicle-document";
import { endToPoint, terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import { conductorOhms } from "../physics/copper";
import type { FaultOverlay } from "./fault-overlay";
import { openOhms } from "./fault-overlay";
import type { NetworkBuilder } from "./network-builder";

/** Contact resistance of a mated cavity, Ω. Common practice, no source. */
export const defaultContactOhms = 0.004;
/** Ring terminal to body metal at a ground point, Ω. Common practice, no source. */
export const defaultGroundOhms = 0.0003;

/** The node a conductor ends at. Connector component faces never carry conductors, so the point is the node. */
const endNode = (end: string, index: VehicleIndex): string => endToPoint(end, index.groundPoints);

/** Conductors, mated contacts, ground points and the shorts between any two nodes. */
export function compileHarness(
  document: VehicleDocument,
  index: VehicleIndex,
  overlay: FaultOverlay,
  builder: NetworkBuilder,
): void {
  for (const component of document.components)
    for (const terminal of terminalsOf(component)) builder.node(`${component.id}:${terminal}`);
  for (const splice of document.splices) builder.node(splice.id);
  for (const conductor of document.conductors) {
    const { id, squareMillimetres, metres } = conductor;
    const fault = builder.fault(id);
    const at20 = conductorOhms(squareMillimetres, metres, 20);
    builder.resistor(id, endNode(conductor.from, index), endNode(conductor.to, index), at20);
    builder.update((world, set) =>
      set.ohms(id, Math.min(openOhms, conductorOhms(squareMillimetres, metres, world.ambient) + fault)),
    );
  }
  for (const connector of document.connectors) {
    for (const cavity of connector.cavities) {
      const id = `${connector.id}.${cavity.cavity}`;
      const inline = connector.component === undefined;
      const near = builder.node(`${id}:h`);
      if (!inline && cavity.terminal === undefined) continue;
      const far = inline ? `${id}:b` : `${connector.component}:${cavity.terminal}`;
      const contact = cavity.contactOhms ?? defaultContactOhms;
      const mated = Math.min(openOhms, contact + builder.fault(id));
      builder.resistor(id, near, far, contact);
      builder.update((world, set) => set.ohms(id, world.unplugged.has(connector.id) ? openOhms : mated));
    }
  }
  for (const { id, contactOhms = defaultGroundOhms } of document.groundPoints) {
    const ohms = Math.min(openOhms, contactOhms + builder.fault(id));
    builder.resistor(id, `${id}:ring`, "body", contactOhms);
    builder.update((_, set) => set.ohms(id, ohms));
  }
  overlay.shorts.forEach((short, position) => {
    if (short.a !== short.b) builder.faultResistor(`short#${position}`, short.a, short.b, short.ohms);
  });
}
