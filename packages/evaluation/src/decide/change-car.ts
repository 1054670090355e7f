import { changeState, ok, type Result, testPoints, type VehicleState } from "@probeworthy/vehicle";
import type { Lead } from "../attempt-state";
import { learnersCar, standing } from "../context";
import type { Observation, Refusal } from "../event";
import { secondsAfter, shopTime } from "../shop-time";
import { age } from "./aging";
import { type Bench, type Decision, noticeSymptoms, refuse, refuseVehicle } from "./outcome";
import { partingRemarks } from "./parting";

type Change = Parameters<typeof changeState>[2];

/** Works on the car for the command's time, makes the change, waits for what comes of it. */
export function makeChange(
  bench: Bench,
  type: keyof typeof shopTime,
  change: Change,
): Result<VehicleState, Refusal> {
  const worked = age(bench, bench.car, shopTime[type].before);
  if (!worked.ok) return worked;
  const changed = changeState(learnersCar(bench.context), worked.value, change);
  if (!changed.ok) return refuseVehicle(changed.error);
  return age(bench, changed.value, secondsAfter(type));
}

/** Leads whose point is no longer there or out of reach after a change. */
export function liftedLeads(bench: Bench, car: VehicleState): { lifted?: Lead[] } {
  const points = testPoints(learnersCar(bench.context), car);
  const lifted = (["red", "black"] as const).filter((lead) => {
    const place = bench.state.leads[lead];
    return place !== null && points.find((point) => point.id === place)?.accessible !== true;
  });
  return lifted.length === 0 ? {} : { lifted };
}

export function unplug(bench: Bench, connector: string): Decision {
  const known = bench.context.document.connectors.find((candidate) => candidate.id === connector);
  if (known === undefined)
    return refuse("unknown_connector", `There is no connector ${connector}.`, "connector");
  if (bench.car.unplugged.includes(connector)) {
    return refuse("already_so", `${connector} is already unplugged.`, "connector");
  }
  return connectorChange(bench, "unplug", { unplug: connector });
}

export function plug(bench: Bench, connector: string): Decision {
  const known = bench.context.document.connectors.find((candidate) => candidate.id === connector);
  if (known === undefined)
    return refuse("unknown_connector", `There is no connector ${connector}.`, "connector");
  if (!bench.car.unplugged.includes(connector)) {
    return refuse("already_so", `${connector} is already plugged in.`, "connector");
  }
  return connectorChange(bench, "plug", { plug: connector });
}

function connectorChange(bench: Bench, type: "unplug" | "plug", change: Change): Decision {
  const car = makeChange(bench, type, change);
  if (!car.ok) return car;
  const items = noticeSymptoms(bench.context, car.value);
  if (!items.ok) return items;
  const observation: Observation = {
    kind: "noticed",
    context: standing(car.value),
    items: [...items.value],
    ...liftedLeads(bench, car.value),
  };
  return ok({ car: car.value, observation, remarks: partingRemarks(bench, car.value, type, change) });
}

export function pullFuse(bench: Bench, fuse: string): Decision {
  const unknown = unknownFuse(bench, fuse);
  if (unknown !== null) return unknown;
  if (bench.car.pulledFuses.includes(fuse)) return refuse("already_so", `${fuse} is already out.`, "fuse");
  return fuseChange(bench, "pullFuse", fuse, { pullFuse: fuse });
}

export function fitFuse(bench: Bench, fuse: string, fresh: boolean): Decision {
  const unknown = unknownFuse(bench, fuse);
  if (unknown !== null) return unknown;
  if (!bench.car.pulledFuses.includes(fuse)) {
    return refuse("already_so", `${fuse} is in its holder. Pull it before you fit another.`, "fuse");
  }
  return fuseChange(bench, "fitFuse", fuse, { fitFuse: fuse, fresh });
}

function unknownFuse(bench: Bench, fuse: string) {
  const known = bench.context.document.components.some((part) => part.kind === "fuse" && part.id === fuse);
  return known ? null : refuse("unknown_fuse", `There is no fuse ${fuse}.`, "fuse");
}

function fuseChange(bench: Bench, type: "pullFuse" | "fitFuse", fuse: string, change: Change): Decision {
  const car = makeChange(bench, type, change);
  if (!car.ok) return car;
  const items = noticeSymptoms(bench.context, car.value);
  if (!items.ok) return items;
  const observation: Observation = {
    kind: "fuse",
    fuse,
    element: car.value.slow.blownFuses.includes(fuse) ? "melted" : "intact",
    holder: type === "pullFuse" ? "empty" : "fitted",
    context: standing(car.value),
    items: [...items.value],
    ...liftedLeads(bench, car.value),
  };
  return ok({ car: car.value, observation, remarks: partingRemarks(bench, car.value, type, change) });
}
