import type { Position, SheetConductor } from "@probeworthy/diagram";
import type { Potentials } from "@/features/potentials/potentials-view";
import { hoverHandlers, type OnHover } from "./hover-handlers";
import { potentialColour } from "./potential-scale";
import styles from "./wiring-diagram.module.css";

type At = Potentials["conductors"][string];

/** Below this a conductor counts as carrying nothing: what a meter would not show, A. */
const noAmps = 0.001;

/** More current, thicker line: one step for every tenfold. */
const widthOf = (amps: number): number =>
  Math.abs(amps) < noAmps ? 3 : Math.min(10, 4 + 1.5 * Math.log10(Math.abs(amps) / noAmps) - 1);

/** A conductor coloured by the potential at each end, each half its own, with an arrow the way current flows. */
export function PotentialLine({
  conductor,
  at,
  supplyVolts,
  onHover,
}: {
  readonly conductor: SheetConductor;
  readonly at: At;
  readonly supplyVolts: number;
  readonly onHover?: OnHover | undefined;
}) {
  const [first, second, middle] = halves(conductor.points);
  const width = widthOf(at.amps);
  const text = (points: readonly Position[]) => points.map(({ x, y }) => `${x},${y}`).join(" ");
  const isLive = Math.abs(at.amps) >= noAmps;
  return (
    <g className={styles.conductor} {...(onHover && hoverHandlers(onHover))}>
      <polyline points={text(conductor.points)} className={styles.conductorHit} />
      <polyline points={text(conductor.points)} className={styles.outline} strokeWidth={width + 1.8} />
      {[first, second].map((half, index) => (
        <polyline
          key={index === 0 ? "from" : "to"}
          points={text(half)}
          className={styles.colour}
          strokeWidth={width}
          style={{ stroke: potentialColour(index === 0 ? at.from : at.to, supplyVolts) }}
        />
      ))}
      {isLive && (
        <path
          d="M -7 -8 L 8 0 L -7 8 Z"
          className={styles.flow}
          transform={`translate(${middle.x} ${middle.y}) rotate(${middle.angle + (at.amps < 0 ? 180 : 0)})`}
        />
      )}
    </g>
  );
}

/** Volts of the nearer end and the current, where the colour code would stand. */
export function PotentialFigures({ conductor, at }: { readonly conductor: SheetConductor; readonly at: At }) {
  const [start] = conductor.points;
  const end = conductor.points.at(-1);
  if (start === undefined || end === undefined) return null;
  return conductor.labels.map((label) => {
    const near =
      Math.hypot(label.x - start.x, label.y - start.y) <= Math.hypot(label.x - end.x, label.y - end.y);
    const lines = [
      voltsText(near ? at.from : at.to),
      ...(Math.abs(at.amps) < noAmps ? [] : [ampsText(at.amps)]),
    ];
    return (
      <text
        key={`${label.x} ${label.y}`}
        x={label.x}
        y={label.y}
        textAnchor={label.anchor}
        className={styles.figure}
      >
        {lines.map((line, index) => {
          // A thin gap before the unit: a whole one would run into the conductor next to it.
          const [figure, unit] = line.split(" ");
          return (
            <tspan key={line}>
              <tspan x={label.x} dy={index === 0 ? 0 : 12}>
                {figure}
              </tspan>
              <tspan dx={1.5}>{unit}</tspan>
            </tspan>
          );
        })}
      </text>
    );
  });
}

export const voltsText = (volts: number): string => `${volts.toFixed(2).replace("-", "\u2212")} V`;

/** Size only: the arrow says which way. */
export function ampsText(amps: number): string {
  const size = Math.abs(amps);
  if (size < noAmps) return "0 A";
  if (size < 1) return `${(size * 1000).toFixed(size < 0.1 ? 1 : 0)} mA`;
  return `${size.toFixed(size < 10 ? 2 : 1)} A`;
}

/** A line cut at half its length, and the middle with the way it runs there, in degrees. */
function halves(
  points: readonly Position[],
): readonly [readonly Position[], readonly Position[], Position & { readonly angle: number }] {
  const lengths = points.slice(1).map((point, index) => {
    const before = points[index] ?? point;
    return Math.hypot(point.x - before.x, point.y - before.y);
  });
  let left = lengths.reduce((sum, length) => sum + length, 0) / 2;
  for (const [index, length] of lengths.entries()) {
    const from = points[index];
    const to = points[index + 1];
    if (from === undefined || to === undefined) break;
    if (left <= length && length > 0) {
      const share = left / length;
      const middle = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
      const angle = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
      return [
        [...points.slice(0, index + 1), middle],
        [middle, ...points.slice(index + 1)],
        { ...middle, angle },
      ];
    }
    left -= length;
  }
  const only = points[0] ?? { x: 0, y: 0 };
  return [points, points, { ...only, angle: 0 }];
}
