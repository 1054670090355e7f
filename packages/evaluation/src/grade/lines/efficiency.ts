import { type Attempted, linesOf, type Scored, score } from "./line";

/** Up to par earns all, three times par nothing, a straight line between. */
const curve = (used: number, par: number): number => Math.min(1, Math.max(0, 1 - (used / par - 1) / 2));

const forTime = 0.6;
const forReadings = 0.4;

/**
 * Efficiency: shop time (60 %) and readings (40 %) against par, times how near the named cause is: being quick at the
 * wrong thing earns nothing.
 */
export function scoreEfficiency({ context, events, final, naming }: Attempted): Scored {
  if (final.report === null) {
    return score(0, [{ text: "No report was handed in.", effect: 0, lines: [] }]);
  }
  const { par } = context.scenario;
  const minutes = final.elapsedSeconds / 60;
  const readings = events.filter(({ observation }) => observation.kind === "reading");
  const [time, count] = [curve(minutes, par.shopMinutes), curve(readings.length, par.readings)];
  return score(naming * (forTime * time + forReadings * count), [
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
    ...(naming < 1
      ? [{ text: "Counts only as far as the cause was found.", effect: 0, lines: [final.sequence] }]
      : []),
  ]);
}
