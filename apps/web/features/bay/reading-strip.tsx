import type { LearnerView } from "@probeworthy/evaluation";
import type { MeterFunction } from "@probeworthy/instruments";
import { formatReading, functionTitles } from "./reading-words";
import { stripScale } from "./strip-scale";

export interface ReadingStripProps {
  readonly log: LearnerView["log"];
  readonly meterFunction: MeterFunction;
}

const width = 280;
const height = 36;
const margin = 6;
const shown = 12;

/** The last readings of one function as dots on a line: tall differences are seen before they are read. */
export function ReadingStrip({ log, meterFunction }: ReadingStripProps) {
  const readings = log
    .flatMap((line) => (line.observation.kind === "reading" ? [line.observation.reading] : []))
    .filter((reading) => reading.function === meterFunction)
    .slice(-shown);
  const values = readings.flatMap((reading) => (reading.value === null ? [] : [reading.value]));
  const { low, high } = stripScale(values);
  const x = (index: number) => margin + (index * (width - 2 * margin)) / (shown - 1);
  const y = (value: number) => height - margin - ((value - low) / (high - low)) * (height - 2 * margin);
  const title = `Last readings: ${functionTitles[meterFunction]}`;
  return (
    <figure className="border-t border-hairline px-3 pt-1 pb-2">
      <figcaption className="flex justify-between text-[0.8125rem] text-ink-soft">
        <span>{title}</span>
        <span className="font-mono">{values.length === 0 ? "none" : `${tick(low)} to ${tick(high)}`}</span>
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        className="block h-9 w-full"
        role="img"
        aria-label={`${title}: ${readings.length === 0 ? "none" : readings.map(formatReading).join("; ")}`}
      >
        <line x1={0} x2={width} y1={y(0)} y2={y(0)} stroke="var(--edge)" strokeDasharray="2 3" />
        {readings.map((reading, index) => {
          const last = index === readings.length - 1;
          const key = `${index} ${reading.display}`;
          return reading.value === null ? (
            <text key={key} x={x(index)} y={11} textAnchor="middle" fontSize={9} fill="var(--ink)">
              {reading.state === "overload" ? "OL" : "–"}
            </text>
          ) : (
            <circle
              key={key}
              cx={x(index)}
              cy={y(reading.value)}
              r={last ? 4 : 2.5}
              fill={last ? "var(--copper)" : "var(--ink)"}
            />
          );
        })}
      </svg>
    </figure>
  );
}

function tick(value: number): string {
  if (Math.abs(value) < 1e-3) return "0";
  return Number(value.toPrecision(3))
    .toLocaleString("en", { maximumFractionDigits: 3 })
    .replace("-", "\u2212");
}
