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
  // Connector component faces never carry conductors, so the point is the node; crossed cavities hold each other's.
  const endNode = (end: string): string => {
    const point = endToPoint(end, index.groundPoints);
    return overlay.crossed.get(point) ?? point;
  };
  if (overlay.crossed.size > 0) builder.shape([...overlay.crossed].join(" "));
  for (const conductor of document.conductors) {
    const { id, squareMillimetres, metres } = conductor;
    const fault = builder.fault(id);
    const from = endNode(conductor.from);
    const to = endNode(conductor.to);
    const chafe = overlay.chafed.get(id);
    const along = chafe?.along ?? 1;
    const worn = chafe ? builder.node(`${id}#worn`) : to;
    builder.resistor(id, from, worn, conductorOhms(squareMillimetres, metres, 20));
    builder.update((world, set) =>
      set.ohms(
        id,
        Math.min(
          openOhms,
          Math.max(1e-6, along * conductorOhms(squareMillimetres, metres, world.ambient)) + fault(world),
        ),
      ),
    );
    if (!chafe) continue;
    builder.faultResistor(`${id}#rest`, worn, to, (world) =>
      Math.max(1e-6, (1 - along) * conductorOhms(squareMillimetres, metres, world.ambient)),
    );
    builder.faultResistor(`${id}#chafe`, worn, "body", chafe.ohms);
  }
  for (const connector of document.connectors) {
    for (const cavity of connector.cavities) {
      const id = `${connector.id}.${cavity.cavity}`;
      const inline = connector.component === undefined;
      const near = builder.node(`${id}:h`);
      if (!inline && cavity.terminal === undefined) continue;
      const far = inline ? `${id}:b` : `${connector.component}:${cavity.terminal}`;
      const contact = cavity.contactOhms ?? defaultContactOhms;
      const fault = builder.fault(id);
      builder.resistor(id, near, far, contact);
      builder.update((world, set) =>
        set.ohms(
          id,
          world.unplugged.has(connector.id) ? openOhms : Math.min(openOhms, contact + fault(world)),
        ),
      );
    }
  }
  for (const { id, contactOhms = defaultGroundOhms } of document.groundPoints) {
    const fault = builder.fault(id);
    builder.resistor(id, `${id}:ring`, "body", contactOhms);
    builder.update((world, set) => set.ohms(id, Math.min(openOhms, contactOhms + fault(world))));
  }
  overlay.shorts.forEach((short, position) => {
    if (short.a !== short.b) builder.faultResistor(`short#${position}`, short.a, short.b, short.ohms);
  });
}
