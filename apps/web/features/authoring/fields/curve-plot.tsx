interface CurvePlotProps {
  readonly points: readonly (readonly unknown[])[];
  readonly columns: readonly [string, string];
}

const width = 240;
const height = 160;
const margin = 12;

/** The points as a line over the axes, so that a slip of the pen is seen. */
export function CurvePlot({ points, columns }: CurvePlotProps) {
  const numbers = points.filter(
    (point): point is [number, number] => typeof point[0] === "number" && typeof point[1] === "number",
  );
  if (numbers.length < 2) return null;
  const range = (values: readonly number[]) => ({
    low: Math.min(0, ...values),
    high: Math.max(0, ...values),
  });
  const xs = range(numbers.map(([x]) => x));
  const ys = range(numbers.map(([, y]) => y));
  const toX = (x: number) => margin + ((x - xs.low) / (xs.high - xs.low || 1)) * (width - 2 * margin);
  const toY = (y: number) =>
    height - margin - ((y - ys.low) / (ys.high - ys.low || 1)) * (height - 2 * margin);
  return (
    <figure className="border border-hairline p-2">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        className="h-40 w-60"
        role="img"
        aria-label={`${columns[1]} over ${columns[0]}, ${numbers.length} points`}
      >
        <path
          d={`M${toX(xs.low)} ${toY(0)}H${toX(xs.high)}M${toX(0)} ${toY(ys.low)}V${toY(ys.high)}`}
          className="stroke-edge"
          fill="none"
        />
        <polyline
          points={numbers.map(([x, y]) => `${toX(x)},${toY(y)}`).join(" ")}
          className="stroke-ink"
          strokeWidth={2}
          fill="none"
        />
        {numbers.map(([x, y], index) => (
          <circle key={index} cx={toX(x)} cy={toY(y)} r={3} className="fill-ink" />
        ))}
      </svg>
      <figcaption className="label-small font-mono">
        {columns[1]} over {columns[0]}
      </figcaption>
    </figure>
  );
}
