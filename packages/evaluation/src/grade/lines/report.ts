import type { correctionActions } from "../../command";
import { neighbours } from "../naming";
import type { CauseKind } from "../repair-group";
import { type Attempted, type Reason, type Scored, score } from "./line";

type Action = (typeof correctionActions)[number];

/** Corrections that cure a cause of each kind. */
const cures: Readonly<Record<CauseKind, readonly Action[]>> = {
  open: ["repairConductor", "repairTerminal", "cleanGround", "replaceComponent", "replaceFuse"],
  highResistance: ["repairTerminal", "repairConductor", "cleanGround", "replaceComponent"],
  shortToGround: ["removeShort", "repairConductor", "replaceComponent"],
  shortToSupply: ["removeShort", "repairConductor", "replaceComponent"],
  shortBetween: ["removeShort", "repairConductor", "replaceComponent"],
  fuseOpen: ["replaceFuse"],
  sensorFault: ["replaceComponent"],
  leakage: ["removeShort", "repairTerminal", "repairConductor", "replaceComponent"],
  relayFault: ["replaceComponent"],
  lampFault: ["replaceComponent"],
  motorFault: ["replaceComponent"],
  moduleFault: ["replaceComponent"],
  wrongPart: ["replaceComponent", "replaceFuse", "removeShort"],
  crossedConductors: ["repairTerminal", "repairConductor"],
  componentFault: ["replaceComponent"],
  battery: ["chargeOrReplaceBattery", "replaceComponent"],
  workingAsDesigned: ["explainToCustomer"],
};

/** Letters a sentence has at the least; a machine counts them, a person reads them. */
const sentence = 20;

/**
 * Report: the machine's part. Concern and explanation are there as sentences, and the correction fits the cause that
 * was named, whether or not that cause is right. What the sentences are worth is for a person.
 */
export function scoreReport({ context, final }: Attempted): Scored {
  const { report } = final;
  if (report === null) {
    return score(0, [{ text: "No report was handed in.", effect: 0, lines: [] }]);
  }
  const lines = [final.sequence];
  const { concern, cause, correction } = report;
  const fits = cures[cause.kind].includes(correction.action);
  const there =
    correction.place === cause.place ||
    correction.action === "explainToCustomer" ||
    neighbours(context.document, cause.place).has(correction.place);
  const item = (holds: boolean, worth: number, yes: string, no: string): Reason => ({
    text: holds ? yes : no,
    effect: holds ? worth : 0,
    lines,
  });
  const reasons = [
    item(
      concern.length >= sentence,
      0.25,
      "The concern is written down.",
      "The concern is hardly a sentence.",
    ),
    item(
      cause.explanation.length >= sentence,
      0.25,
      "The cause is explained.",
      "The cause is hardly explained.",
    ),
    item(
      fits,
      0.3,
      "The correction fits the cause that was named.",
      "The correction does not cure the cause that was named.",
    ),
    item(there, 0.2, "It is made where the cause is.", "It is made somewhere else than the cause."),
  ];
  return score(
    reasons.reduce((sum, { effect }) => sum + effect, 0),
    [...reasons, { text: "A person reads the wording.", effect: 0, lines }],
    true,
  );
}
