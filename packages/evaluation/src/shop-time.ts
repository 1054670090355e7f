import { changeSeconds } from "@probeworthy/vehicle";
import type { Command } from "./command";

/**
 * What a command takes in the shop, in simulated seconds: `before` is the work until the thing is done, `after` the
 * look at what came of it. The car runs on during both: it warms, it cools, codes mature. Our own round figures for
 * somebody who knows where the part is.
 */
export const shopTime: Readonly<
  Record<Command["type"], { readonly before: number; readonly after: number }>
> = {
  setConditions: { before: 0, after: 10 },
  unplug: { before: 55, after: 5 },
  plug: { before: 55, after: 5 },
  pullFuse: { before: 40, after: 5 },
  fitFuse: { before: 40, after: 5 },
  placeLead: { before: 10, after: 0 },
  liftLead: { before: 2, after: 0 },
  selectFunction: { before: 3, after: 0 },
  takeReading: { before: 20, after: 0 },
  replaceMeterFuse: { before: 300, after: 0 },
  readCodes: { before: 60, after: 0 },
  readLiveData: { before: 60, after: 0 },
  clearCodes: { before: 60, after: 5 },
  wait: { before: 0, after: 0 }, // the seconds of the command itself
  submitReport: { before: 0, after: 0 },
};

/** Shop time of one command, s. */
export function secondsFor(command: Command): number {
  if (command.type === "wait") return command.seconds;
  const { before, after } = shopTime[command.type];
  return before + after;
}

/** What is left of the look after a change once the seconds are gone that belong to the change itself. */
export function secondsAfter(type: Command["type"]): number {
  const { after } = shopTime[type];
  const own = changes[type];
  return own === undefined ? after : after - changeSeconds[own];
}

const changes: Partial<Record<Command["type"], Exclude<keyof typeof changeSeconds, "start">>> = {
  setConditions: "conditions",
  unplug: "plug",
  plug: "plug",
  pullFuse: "fuse",
  fitFuse: "fuse",
  clearCodes: "clear",
};
