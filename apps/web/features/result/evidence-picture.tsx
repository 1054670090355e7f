import type { ShownGrade } from "./result-view";

export interface EvidencePictureProps {
  readonly evidence: ShownGrade["evidence"];
}

const width = 640;
const left = 112;
const right = 132;
const rowHeight = 30;
const barHeight = 18;
const top = 26;

/**
 * All candidate causes as one heap that runs out, reading by reading: the wider a bar, the more causes the readings
 * still allow. The copper line is the true cause; it is drawn only as long as the readings allow it.
 */
export function EvidencePicture({ evidence }: EvidencePictureProps) {
  const { candidates, steps, truth } = evidence;
  const total = candidates.length;
  const rows = [
    { key: "start", label: "at hand-over", standing: total, hasTruth: true },
    ...steps.map((step) => ({
      key: `line-${step.line}`,
      label: `line ${step.line}`,
      standing: step.standing.length,
      hasTruth: step.standing.includes(truth),
    })),
  ];
  const centre = left + (width - left - right) / 2;
  const half = (standing: number) =>
    total === 0 ? 0 : Math.max(1.5, ((standing / total) * (width - left - right)) / 2);
  const y = (index: number) => top + index * rowHeight;
  const height = y(rows.length);
  const last = rows.at(-1)?.standing ?? total;
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      className="block w-full max-w-3xl font-mono"
      role="img"
      aria-label={`${total} causes were possible at hand-over; after ${steps.length} observations ${last} ${last === 1 ? "was" : "were"} left. The table below says which.`}
    >
      <defs>
        <pattern id="sand" width="5" height="5" patternUnits="userSpaceOnUse">
          <rect width="5" height="5" fill="var(--panel)" />
          <circle cx="1.2" cy="1.4" r="0.8" fill="var(--ink)" />
          <circle cx="3.8" cy="3.6" r="0.8" fill="var(--ink)" />
        </pattern>
      </defs>
      <text x={left} y={14} fontSize="12" fill="var(--ink-soft)">
        causes the readings still allow
      </text>
      {rows.map((row, index) => {
        const next = rows[index + 1];
        const x = half(row.standing);
        const below = half(next?.standing ?? row.standing);
        const foot = y(index) + barHeight;
        return (
          <g key={row.key}>
            {next !== undefined && (
              <path
                d={`M${centre - x} ${foot} L${centre + x} ${foot} L${centre + below} ${y(index + 1)} L${centre - below} ${y(index + 1)} Z`}
                fill="url(#sand)"
                opacity="0.45"
              />
            )}
            <rect
              x={centre - x}
              y={y(index)}
              width={2 * x}
              height={barHeight}
              fill="url(#sand)"
              stroke="var(--ink)"
            />
            {row.hasTruth && (
              <rect
                x={centre - 2.5}
                y={y(index) - 1}
                width={5}
                height={barHeight + 2}
                fill="var(--copper-fill)"
              />
            )}
            <text x={left - 10} y={y(index) + 13} fontSize="12" textAnchor="end" fill="var(--ink)">
              {row.label}
            </text>
            <text x={width - right + 10} y={y(index) + 13} fontSize="12" fill="var(--ink)">
              {`${row.standing} left`}
              {!row.hasTruth && " (true one out)"}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
