import { type MeterFunction, readMeter } from "@probeworthy/instruments";
import { ok, testPoints } from "@probeworthy/vehicle";
import type { Lead } from "../attempt-state";
import type { Prediction } from "../command";
import { learnersCar, standing } from "../context";
import { shopTime } from "../shop-time";
import { age } from "./aging";
import { type Bench, type Decision, refuse, refuseVehicle } from "./outcome";

const bench = (from: Bench, type: keyof typeof shopTime, message: string): Decision => {
  const car = age(from, from.car, shopTime[type].before);
  return car.ok ? ok({ car: car.value, observation: { kind: "bench", message } }) : car;
};

export function placeLead(from: Bench, lead: Lead, id: string): Decision {
  const point = testPoints(learnersCar(from.context), from.car).find((candidate) => candidate.id === id);
  if (point === undefined) return refuse("unknown_point", `There is no test point ${id}.`, "point");
  if (!point.accessible) {
    const reason = point.reason ?? "It cannot be reached as the car stands.";
    return refuse("point_not_accessible", `The ${lead} lead cannot go to ${point.title}. ${reason}`, "point");
  }
  if (from.state.leads[lead] === id) {
    return refuse("already_so", `The ${lead} lead is already at ${point.title}.`, "point");
  }
  return bench(from, "placeLead", `The ${lead} lead is at ${point.title}.`);
}

export function liftLead(from: Bench, lead: Lead): Decision {
  if (from.state.leads[lead] === null) return refuse("already_so", `The ${lead} lead is not placed.`, "lead");
  return bench(from, "liftLead", `The ${lead} lead is off.`);
}

const functionTitles: Readonly<Record<MeterFunction, string>> = {
  volts: "volts DC",
  ohms: "ohms",
  continuity: "continuity",
  amps: "amps, leads in the 10 A input",
};

function notAllowed(from: Bench, meterFunction: MeterFunction) {
  if (from.context.scenario.instruments.includes(meterFunction)) return null;
  return refuse(
    "instrument_not_allowed",
    `This job is done without ${functionTitles[meterFunction]}.`,
    "function",
  );
}

export function selectFunction(from: Bench, meterFunction: MeterFunction): Decision {
  const refusal = notAllowed(from, meterFunction);
  if (refusal !== null) return refusal;
  if (from.state.function === meterFunction) {
    return refuse("already_so", `The meter is already on ${functionTitles[meterFunction]}.`, "function");
  }
  return bench(from, "selectFunction", `The meter is on ${functionTitles[meterFunction]}.`);
}

export function takeReading(from: Bench, prediction: Prediction | undefined): Decision {
  const { state, context } = from;
  const refusal = notAllowed(from, state.function);
  if (refusal !== null) return refusal;
  const { red, black } = state.leads;
  if (red === null || black === null) {
    const missing = red === null ? (black === null ? "both leads" : "the red lead") : "the black lead";
    return refuse("leads_not_placed", `Place ${missing} first.`);
  }
  if (context.scenario.requirePrediction && prediction === undefined) {
    return refuse("prediction_required", "Say what you expect before you look.", "prediction");
  }
  const car = age(from, from.car, shopTime.takeReading.before);
  if (!car.ok) return car;
  const answer = readMeter({
    vehicle: learnersCar(context),
    state: car.value,
    function: state.function,
    red,
    black,
    meterFuse: state.world.meterFuse,
  });
  if (!answer.ok) return refuseVehicle(answer.error);
  return ok({
    car: car.value,
    observation: {
      kind: "reading",
      red,
      black,
      reading: answer.value.reading,
      context: standing(car.value),
      ...(prediction === undefined ? {} : { prediction }),
    },
    meterFuse: answer.value.blowsMeterFuse ? "open" : state.world.meterFuse,
    remarks: [...answer.value.remarks],
  });
}

export function replaceMeterFuse(from: Bench): Decision {
  if (from.state.world.meterFuse === "good") {
    return refuse("already_so", "You open the meter: its fuse is good.");
  }
  const done = bench(from, "replaceMeterFuse", "The meter has a new fuse.");
  return done.ok ? ok({ ...done.value, meterFuse: "good" }) : done;
}
