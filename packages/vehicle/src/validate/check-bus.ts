import type { ComponentOf } from "../document/component";
import type { VehicleDocument } from "../document/vehicle-document";
import type { VehicleIndex } from "../document/vehicle-index";
import type { DocumentMessage } from "../simulation/types";
import { copperLinks, reach } from "./nets";

/** Each pair of bus wires wants two terminators (ISO 11898-2), inside modules or as resistors across the wires. */
export function checkBus(document: VehicleDocument, index: VehicleIndex): DocumentMessage[] {
  const links = copperLinks(document, index, { switches: false });
  const members = document.components.flatMap((component, position) =>
    component.kind === "module" && component.bus ? [{ module: component, bus: component.bus, position }] : [],
  );
  const resistors = document.components.filter(
    (component): component is ComponentOf<"resistor"> => component.kind === "resistor",
  );
  const seen = new Set<string>();
  const messages: DocumentMessage[] = [];
  for (const { module, bus, position } of members) {
    if (seen.has(module.id)) continue;
    const high = reach(`${module.id}:${bus.canHigh}`, links).nodes;
    const low = reach(`${module.id}:${bus.canLow}`, links).nodes;
    const onBus = members.filter((other) => high.has(`${other.module.id}:${other.bus.canHigh}`));
    for (const other of onBus) {
      seen.add(other.module.id);
      if (!low.has(`${other.module.id}:${other.bus.canLow}`))
        messages.push({
          severity: "error",
          path: `components[${other.position}].bus.canLow`,
          message: `${other.module.id} shares CANH with ${module.id} but not CANL; check for swapped or missing wires`,
        });
    }
    const across = resistors.filter(({ id }) => {
      const joins = (from: string, to: string): boolean =>
        high.has(`${id}:${from}`) && low.has(`${id}:${to}`);
      return joins("1", "2") || joins("2", "1");
    });
    const count = onBus.filter((other) => other.bus.terminationOhms !== undefined).length + across.length;
    if (count !== 2)
      messages.push({
        severity: "warning",
        path: `components[${position}].bus`,
        message: `the bus of ${onBus.map((other) => other.module.id).join(", ")} has ${count} terminators; two of 120 Ω, one at each end, would be right`,
      });
  }
  return messages;
}
