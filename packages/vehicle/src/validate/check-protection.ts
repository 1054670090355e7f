import type { VehicleDocument } from "../document/vehicle-document";
import type { VehicleIndex } from "../document/vehicle-index";
import { conductorAmpacity } from "../physics/copper";
import type { DocumentMessage } from "../simulation/types";
import { copperLinks, reach } from "./nets";

/** From this cross-section on, starter and charging cables usually run without a fuse, mm². Common practice, no source. */
const mainCable = 16;

/** A lead from the battery to a fuse holder may be so long without one before it, m. Common practice, no source. */
const leadToFuse = 0.3;

/** Feeds without a fuse, and fuses larger than a conductor behind them carries (continuous current at 30 °C). */
export function checkProtection(document: VehicleDocument, index: VehicleIndex): DocumentMessage[] {
  const links = copperLinks(document, index, { switches: true });
  const messages: DocumentMessage[] = [];
  const fuses = document.components.filter(({ kind }) => kind === "fuse");
  const live = new Set<string>();
  const unfused = new Set<number>();
  for (const component of document.components) {
    const source = { battery: "+", chargingSource: "B+" }[component.kind as string];
    if (source === undefined) continue;
    const found = reach(`${component.id}:${source}`, links);
    for (const node of found.nodes) live.add(node);
    for (const position of found.conductors) unfused.add(position);
  }
  for (const position of [...unfused].sort((a, b) => a - b)) {
    const conductor = document.conductors[position];
    if (!conductor || conductor.squareMillimetres >= mainCable) continue;
    const endsAtFuse = [conductor.from, conductor.to].some((end) =>
      fuses.some(({ id }) => end.startsWith(`${id}:`)),
    );
    if (endsAtFuse && conductor.metres <= leadToFuse) continue;
    messages.push({
      severity: "error",
      path: `conductors[${position}]`,
      message: endsAtFuse
        ? `${conductor.id} (${conductor.squareMillimetres} mm², ${conductor.metres} m) is live from the battery with no fuse before it; put the fuse within ${leadToFuse} m of the supply`
        : `${conductor.id} (${conductor.squareMillimetres} mm²) is live from the battery with no fuse before it; feed it through a fuse`,
    });
  }
  document.components.forEach((component) => {
    if (component.kind !== "fuse") return;
    for (const terminal of ["1", "2"]) {
      const node = `${component.id}:${terminal}`;
      if (live.has(node)) continue;
      for (const position of [...reach(node, links).conductors].sort((a, b) => a - b)) {
        const conductor = document.conductors[position];
        if (!conductor) continue;
        const carries = conductorAmpacity(conductor.squareMillimetres);
        if (carries >= component.ratingAmps) continue;
        messages.push({
          severity: "warning",
          path: `conductors[${position}].squareMillimetres`,
          message: `${conductor.id} (${conductor.squareMillimetres} mm²) carries about ${carries.toFixed(0)} A, its fuse ${component.id} holds ${component.ratingAmps} A; use a larger conductor or a smaller fuse`,
        });
      }
    }
  });
  return messages;
}
