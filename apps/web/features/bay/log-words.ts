import type { LearnerView } from "@probeworthy/evaluation";
import type { Names } from "./names";
import { formatReading, functionTitles } from "./reading-words";

export type LogLine = LearnerView["log"][number];
type Context = Extract<LogLine["observation"], { kind: "reading" }>["context"];

/** `40 s`, `12 min`, `1 h 05 min`. */
export function formatShopTime(seconds: number): string {
  const whole = Math.round(seconds);
  if (whole < 60) return `${whole} s`;
  const minutes = Math.floor(whole / 60);
  const rest = whole % 60;
  if (minutes < 60)
    return rest === 0 ? `${minutes} min` : `${minutes} min ${String(rest).padStart(2, "0")} s`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, "0")} min`;
}

/** What was done, in the past tense of a work log. */
export function describeCommand(command: LogLine["command"], names: Names): string {
  switch (command.type) {
    case "open":
      return "Took the job over";
    case "setConditions":
      return Object.entries(command.values)
        .map(
          ([name, value]) =>
            `Set ${names.conditionTitle(name).toLowerCase()} to ${names.conditionValue(name, value)}`,
        )
        .join("; ");
    case "unplug":
      return `Unplugged ${names.connector(command.connector)}`;
    case "plug":
      return `Plugged ${names.connector(command.connector)} back`;
    case "pullFuse":
      return `Pulled ${names.fuse(command.fuse)}`;
    case "fitFuse":
      return command.fresh
        ? `Fitted a new fuse as ${names.fuse(command.fuse)}`
        : `Put ${names.fuse(command.fuse)} back`;
    case "placeLead":
      return `Placed the ${command.lead} lead on ${names.point(command.point)}`;
    case "liftLead":
      return `Lifted the ${command.lead} lead`;
    case "selectFunction":
      return `Set the meter to ${functionTitles[command.function].toLowerCase()}`;
    case "takeReading":
      return "Took a reading";
    case "replaceMeterFuse":
      return "Replaced the meter's fuse";
    case "readCodes":
      return `Read the codes of ${names.module(command.module)}`;
    case "readLiveData":
      return `Read live data of ${names.module(command.module)}`;
    case "clearCodes":
      return `Cleared the codes of ${names.module(command.module)}`;
    case "wait":
      return `Let it stand for ${formatShopTime(command.seconds)}`;
    case "submitReport":
      return "Handed in the report";
  }
}

// The bits of the status byte of ISO 14229-1, in shop words.
const statusWords: Readonly<Record<string, string>> = {
  testFailed: "fails now",
  testFailedThisOperationCycle: "failed in this cycle",
  pendingDTC: "pending",
  confirmedDTC: "confirmed",
  testNotCompletedSinceLastClear: "not tested since cleared",
  testFailedSinceLastClear: "failed since cleared",
  testNotCompletedThisOperationCycle: "not tested in this cycle",
  warningIndicatorRequested: "asks for the lamp",
};

export function describeStatus(bit: string): string {
  return statusWords[bit] ?? bit;
}

/** What was seen because of it; empty when nothing of the car was looked at. */
export function describeObservation(line: LogLine, names: Names): string {
  const { observation } = line;
  switch (observation.kind) {
    case "reading":
      return `${functionTitles[observation.reading.function]}, red on ${names.point(observation.red)}, black on ${names.point(observation.black)}: ${formatReading(observation.reading)}`;
    case "noticed":
      return [
        describeLifted(observation.lifted),
        ...observation.items.map((item) => `${item.title}: ${item.text}`),
      ]
        .filter((part) => part !== "")
        .join("; ");
    case "fuse":
      return [
        observation.element === "melted" ? "The element is melted through" : "The element is whole",
        describeLifted(observation.lifted),
      ]
        .filter((part) => part !== "")
        .join("; ");
    case "codes":
      if (!observation.answered) return observation.message;
      if (observation.codes.length === 0) return "No codes stored.";
      return observation.codes
        .map(
          (code) =>
            `${code.code} ${code.text} (${code.statusText.map(describeStatus).join(", ") || "no status"})`,
        )
        .join("; ");
    case "liveData":
      if (!observation.answered) return observation.message;
      return observation.values
        .map((value) => `${value.title} ${value.text} ${value.unit}`.trim())
        .join("; ");
    case "bench":
      return observation.message;
    case "submitted":
      return "";
  }
}

/** The same in short, for the slip: `On · 850 1/min · 6 N·m · unplugged X2`. Units say which is which. */
export function summariseContext(context: Context, names: Names): string {
  return [
    ...Object.entries(context.conditions).map(([name, value]) => names.conditionValue(name, value)),
    ...(context.unplugged.length === 0 ? [] : [`unplugged ${context.unplugged.join(", ")}`]),
    ...(context.pulledFuses.length === 0 ? [] : [`pulled ${context.pulledFuses.join(", ")}`]),
  ].join(" · ");
}

function describeLifted(lifted: readonly string[] | undefined): string {
  if (lifted === undefined || lifted.length === 0) return "";
  return lifted.length === 2 ? "both leads came off" : `the ${lifted[0]} lead came off`;
}

/** Condition of the car while something was observed: `Key: on; unplugged: X2`. */
export function describeContext(context: Context, names: Names): string {
  const conditions = Object.entries(context.conditions).map(
    ([name, value]) => `${names.conditionTitle(name)}: ${names.conditionValue(name, value)}`,
  );
  return [
    ...conditions,
    ...(context.unplugged.length === 0 ? [] : [`unplugged: ${context.unplugged.join(", ")}`]),
    ...(context.pulledFuses.length === 0 ? [] : [`pulled: ${context.pulledFuses.join(", ")}`]),
  ].join("; ");
}
