import { type Attempted, linesOf, type Scored, score } from "./line";

/** Up to par earns all, three times par nothing, a straight line between. */
const curve = (used: number, par: number): number => Math.min(1, Math.max(0, 1 - (used / par - 1) / 2));

const forTime = 0.5;
const forReadings = 0.3;
const forParts = 0.2;

/** Each part fitted or ordered without evidence takes this much of what parts earn. */
const partCost = 0.5;

/**
 * Efficiency: shop time (50 %) and readings (30 %) against par, and parts without evidence (20 %), times how near the
 * named cause is: being quick at the wrong thing earns nothing.
 */
export function scoreEfficiency(attempted: Attempted): Scored {
  const { context, events, final, naming } = attempted;
  if (final.report === null) {
    return score(0, [{ text: "No report was handed in.", effect: 0, lines: [] }]);
  }
  const { par } = context.scenario;
  const minutes = final.elapsedSeconds / 60;
  const readings = events.filter(({ observation }) => observation.kind === "reading");
  const [time, count] = [curve(minutes, par.shopMinutes), curve(readings.length, par.readings)];
  const wasted = partsWithoutEvidence(attempted);
  const parts = Math.max(0, 1 - partCost * wasted.length);
  return score(naming * (forTime * time + forReadings * count + forParts * parts), [
    {
      text: `${minutes.toFixed(0)} minutes of shop time; an experienced technician needs about ${par.shopMinutes}.`,
      effect: naming * forTime * time,
      lines: [final.sequence],
    },
    {
      text: `${readings.length} readings; an experienced technician needs about ${par.readings}.`,
      effect: naming * forReadings * count,
      lines: linesOf(readings),
    },
    {
      text:
        wasted.length === 0
          ? "No part was fitted or ordered without evidence."
          : `Fitted or ordered without evidence: ${wasted.map(({ place }) => place).join(", ")}.`,
      effect: naming * forParts * parts,
      lines: wasted.map(({ line }) => line),
    },
    ...(naming < 1
      ? [{ text: "Counts only as far as the cause was found.", effect: 0, lines: [final.sequence] }]
      : []),
  ]);
}

/**
 * Parts that no reading asked for: a new fuse for one whose element was seen intact, and a component the report has
 * replaced although other causes still stand, or although it is not what is at fault.
 */
export function partsWithoutEvidence({
  events,
  final,
  proof,
  naming,
}: Attempted): { readonly place: string; readonly line: number }[] {
  const parts: { place: string; line: number }[] = [];
  const intact = new Set<string>();
  for (const { command, observation, sequence } of events) {
    if (observation.kind !== "fuse") continue;
    if (command.type === "fitFuse" && command.fresh && intact.has(observation.fuse)) {
      parts.push({ place: observation.fuse, line: sequence });
    }
    if (command.type === "pullFuse" && observation.element === "intact") intact.add(observation.fuse);
    else intact.delete(observation.fuse);
  }
  const correction = final.report?.correction;
  const proven = proof.proven && naming > 0.5;
  if (correction?.action === "replaceComponent" && !proven) {
    parts.push({ place: correction.place, line: final.sequence });
  }
  return parts;
}
