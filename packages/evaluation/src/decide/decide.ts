import { ok, type Result } from "@probeworthy/vehicle";
import { type AttemptState, carOf } from "../attempt-state";
import type { Command } from "../command";
import type { AttemptContext } from "../context";
import type { AttemptEvent, Refusal } from "../event";
import { secondsFor } from "../shop-time";
import { fitFuse, plug, pullFuse, unplug } from "./change-car";
import { type Bench, type Decision, refuse } from "./outcome";
import { setConditions } from "./set-conditions";
import { submitReport } from "./submit-report";
import { liftLead, placeLead, replaceMeterFuse, selectFunction, takeReading } from "./use-meter";
import { clearCodes, readModule } from "./use-scan-tool";
import { wait } from "./wait";

/**
 * Carries out one command on the learner's car: the lines to append to the log, or a refusal that changes nothing.
 * Deterministic: the same context, state and command give the same lines.
 */
export function decide(
  context: AttemptContext,
  state: AttemptState,
  command: Command,
): Result<AttemptEvent[], Refusal> {
  if (state.status === "submitted") {
    return refuse("attempt_closed", "The report is handed in: this job is closed.");
  }
  const limit = limitReached(context, state, command);
  if (limit !== null) return refuse("limit_reached", limit);
  const bench: Bench = { context, state, car: carOf(state) };
  const decision = carryOut(bench, command);
  if (!decision.ok) return decision;
  const { car, observation, meterFuse, remarks = [] } = decision.value;
  const renewed = command.type === "fitFuse" && command.fresh ? command.fuse : null;
  const blew = car.slow.blownFuses.some(
    (fuse) => fuse === renewed || !state.world.slow.blownFuses.includes(fuse),
  );
  return ok([
    {
      sequence: state.sequence + 1,
      command,
      observation,
      elapsedSeconds: state.elapsedSeconds + secondsFor(command),
      world: {
        slow: car.slow,
        meterFuse: meterFuse ?? state.world.meterFuse,
        remarks: blew ? [...remarks, "fuse_blew"] : [...remarks],
      },
    },
  ]);
}

/** A report is always taken: running out of time is no reason to lose what was found. */
function limitReached({ scenario }: AttemptContext, state: AttemptState, command: Command): string | null {
  if (command.type === "submitReport") return null;
  const { actions, shopMinutes } = scenario.limits;
  if (state.actions >= actions) {
    return `All ${actions} actions of this job are used. Hand in your report.`;
  }
  if (state.elapsedSeconds + secondsFor(command) > shopMinutes * 60) {
    return `This would go past the ${shopMinutes} minutes of shop time. Hand in your report.`;
  }
  return null;
}

function carryOut(bench: Bench, command: Command): Decision {
  switch (command.type) {
    case "setConditions":
      return setConditions(bench, command.values);
    case "unplug":
      return unplug(bench, command.connector);
    case "plug":
      return plug(bench, command.connector);
    case "pullFuse":
      return pullFuse(bench, command.fuse);
    case "fitFuse":
      return fitFuse(bench, command.fuse, command.fresh);
    case "placeLead":
      return placeLead(bench, command.lead, command.point);
    case "liftLead":
      return liftLead(bench, command.lead);
    case "selectFunction":
      return selectFunction(bench, command.function);
    case "takeReading":
      return takeReading(bench, command.prediction);
    case "replaceMeterFuse":
      return replaceMeterFuse(bench);
    case "readCodes":
      return readModule(bench, command.module, "codes");
    case "readLiveData":
      return readModule(bench, command.module, "liveData");
    case "clearCodes":
      return clearCodes(bench, command.module);
    case "wait":
      return wait(bench, command.seconds);
    case "submitReport":
      return submitReport(bench, command.report);
  }
}
