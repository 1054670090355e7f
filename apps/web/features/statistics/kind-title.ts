import { causeKinds } from "@probeworthy/evaluation";
import { nothingWrong } from "@probeworthy/gradebook";
import { causeKindTitles } from "../bay/report-words";

/** What a kind is called in a report. */
export function kindTitle(kind: string): string {
  if (kind === nothingWrong) return causeKindTitles.workingAsDesigned;
  const known = causeKinds.find((one) => one === kind);
  if (known === undefined) throw new Error(`${kind} is not a kind of cause`);
  return causeKindTitles[known];
}
