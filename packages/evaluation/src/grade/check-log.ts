import { err, ok, type Result } from "@probeworthy/vehicle";
import { type AttemptEvent, attemptEventSchema } from "../event";

export interface GradeError {
  readonly code: "damaged_log";
  /** Sequence number at which the log is damaged. */
  readonly line: number;
  readonly message: string;
}

/** A log as it must be: begins with the hand-over, counts without gaps, time never runs back, nothing after the report. */
export function checkLog(events: readonly unknown[]): Result<AttemptEvent[], GradeError> {
  const damaged = (line: number, message: string) => err<GradeError>({ code: "damaged_log", line, message });
  const checked: AttemptEvent[] = [];
  for (const [index, raw] of events.entries()) {
    const line = index + 1;
    const parsed = attemptEventSchema.safeParse(raw);
    if (!parsed.success) {
      const issue = parsed.error.issues[0];
      return damaged(line, `line ${line}: ${issue?.path.join(".")}: ${issue?.message}`);
    }
    const event = parsed.data;
    const before = checked.at(-1);
    if (event.sequence !== line)
      return damaged(line, `line ${line} is missing: ${event.sequence} stands there`);
    if ((event.command.type === "open") !== (before === undefined)) {
      return damaged(line, `line ${line}: a log begins with the hand-over, once`);
    }
    if (before !== undefined && event.elapsedSeconds < before.elapsedSeconds) {
      return damaged(line, `line ${line}: shop time runs backwards`);
    }
    if (before?.command.type === "submitReport") {
      return damaged(line, `line ${line} comes after the report`);
    }
    checked.push(event);
  }
  return checked.length === 0 ? damaged(1, "the log is empty") : ok(checked);
}
