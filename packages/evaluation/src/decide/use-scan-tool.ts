import { readScanTool } from "@probeworthy/instruments";
import { changeState, ok, type ScanAnswer, type VehicleState } from "@probeworthy/vehicle";
import { learnersCar, standing } from "../context";
import type { Observation } from "../event";
import type { InstrumentName } from "../scenario";
import { secondsAfter, shopTime } from "../shop-time";
import { age } from "./aging";
import { type Bench, type Decision, refuse, refuseVehicle } from "./outcome";

function refusal(bench: Bench, module: string, instrument: InstrumentName) {
  const known = bench.context.document.components.some(
    (part) => part.kind === "module" && part.id === module,
  );
  if (!known) return refuse("unknown_module", `There is no control module ${module}.`, "module");
  if (bench.context.scenario.instruments.includes(instrument)) return null;
  const title = instrument === "codes" ? "fault codes" : "live data";
  return refuse("instrument_not_allowed", `This job is done without ${title}.`);
}

/** What the tool shows of an answer about codes. Shared with the replay under other candidates. */
export function codesObservation(
  module: string,
  answer: ScanAnswer,
  car: VehicleState,
): Extract<Observation, { kind: "codes" }> {
  const codes = answer.ok ? answer.codes : [];
  return {
    kind: "codes",
    module,
    answered: answer.ok,
    message: answer.ok ? countOf(codes.length) : answer.message,
    codes: codes.map(({ code, text, status, statusText }) => ({
      code,
      text,
      status,
      statusText: [...statusText],
    })),
    context: standing(car),
  };
}

const countOf = (codes: number) =>
  codes === 0 ? "No fault codes stored." : codes === 1 ? "1 fault code." : `${codes} fault codes.`;

export function liveDataObservation(
  module: string,
  answer: ScanAnswer,
  car: VehicleState,
): Extract<Observation, { kind: "liveData" }> {
  return {
    kind: "liveData",
    module,
    answered: answer.ok,
    message: answer.ok ? "Live data as the module reports it." : answer.message,
    values: answer.ok
      ? answer.values.map(({ name, title, unit, text, value }) => ({ name, title, unit, text, value }))
      : [],
    context: standing(car),
  };
}

export function readModule(bench: Bench, module: string, instrument: "codes" | "liveData"): Decision {
  const refused = refusal(bench, module, instrument);
  if (refused !== null) return refused;
  const type = instrument === "codes" ? "readCodes" : "readLiveData";
  const car = age(bench, bench.car, shopTime[type].before);
  if (!car.ok) return car;
  const answer = readScanTool(learnersCar(bench.context), car.value, module);
  if (!answer.ok) return refuseVehicle(answer.error);
  const show = instrument === "codes" ? codesObservation : liveDataObservation;
  return ok({ car: car.value, observation: show(module, answer.value, car.value) });
}

/** Clears, then shows what is stored now: what comes straight back is present. A silent module is not cleared. */
export function clearCodes(bench: Bench, module: string): Decision {
  const refused = refusal(bench, module, "codes");
  if (refused !== null) return refused;
  const vehicle = learnersCar(bench.context);
  const car = age(bench, bench.car, shopTime.clearCodes.before);
  if (!car.ok) return car;
  const changed = changeState(vehicle, car.value, { clearCodes: module });
  if (!changed.ok) return refuseVehicle(changed.error);
  const left = age(bench, changed.value, secondsAfter("clearCodes"));
  if (!left.ok) return left;
  const after = readScanTool(vehicle, left.value, module);
  if (!after.ok) return refuseVehicle(after.error);
  return ok({ car: left.value, observation: codesObservation(module, after.value, left.value) });
}
