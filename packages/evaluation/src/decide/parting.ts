import { type changeState, settle, type VehicleState } from "@probeworthy/vehicle";
import { prepared } from "../context";
import type { World } from "../event";
import type { Bench } from "./outcome";

type Change = Parameters<typeof changeState>[2];

/** Above this a contact that parts draws an arc worth minding, A. Our own figure. */
const arcAmps = 1;

/**
 * Was something parted or joined that should have been dead? Judged on a healthy car in the same condition: a learner
 * must not be let off because the fault happened to have killed the circuit, and learns nothing from the remark.
 */
export function partingRemarks(
  bench: Bench,
  after: VehicleState,
  type: "unplug" | "plug" | "pullFuse" | "fitFuse",
  change: Change,
): World["remarks"] {
  // The live side of a change is the state in which the contact is closed.
  const closed = type === "unplug" || type === "pullFuse" ? bench.car : after;
  const healthy = prepared(bench.context.document, []);
  const settled = settle(healthy, { ...closed, slow: { ...closed.slow, blownFuses: [] } });
  if (!settled.ok) return [];
  const remarks: World["remarks"] = [];
  const { document } = bench.context;
  if ("unplug" in change || "plug" in change) {
    const id = "unplug" in change ? change.unplug : change.plug;
    const connector = document.connectors.find((candidate) => candidate.id === id);
    const module = connector?.component;
    if (module !== undefined && settled.value.modules[module]?.powered === true)
      remarks.push("unplugged_live");
    const ends = new RegExp(`^${id}\\.`);
    const wires = document.conductors.filter((wire) => ends.test(wire.from) || ends.test(wire.to));
    if (wires.some((wire) => Math.abs(settled.value.amps(wire.id)) > arcAmps))
      remarks.push("parted_under_load");
  } else {
    const fuse = "pullFuse" in change ? change.pullFuse : "fitFuse" in change ? change.fitFuse : null;
    if (fuse !== null && Math.abs(settled.value.amps(fuse)) > arcAmps) remarks.push("parted_under_load");
  }
  return remarks;
}
