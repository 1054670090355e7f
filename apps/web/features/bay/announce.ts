import type { Command, LearnerView } from "@probeworthy/evaluation";
import { describeCommand, describeObservation } from "./log-words";
import { createNames } from "./names";
import { speakReading } from "./reading-words";

/** What is read aloud after a command was carried out. */
export function announce(command: Command, view: LearnerView): string {
  const names = createNames(view);
  const line = view.log.at(-1);
  if (line === undefined) return "";
  const done = describeCommand(command, names);
  if (line.observation.kind === "reading") {
    const { reading, red, black } = line.observation;
    return `Reading: ${speakReading(reading)} Red on ${names.point(red)}, black on ${names.point(black)}.`;
  }
  const seen = describeObservation(line, names);
  return seen === "" ? `${done}.` : `${done}. ${seen}`;
}
