import type { SheetConductor } from "@probeworthy/diagram";
import clsx from "clsx";
import { themedColour } from "./colours";
import { hoverHandlers, type OnHover } from "./hover-handlers";
import styles from "./wiring-diagram.module.css";

/** Thicker copper is drawn thicker, within what still reads as a line. */
export const strokeWidth = (squareMillimetres: number): number =>
  Math.min(6.5, 2.6 + Math.sqrt(squareMillimetres) * 0.7);

/** A conductor in its real colour: outline in the theme's ink, base colour, second colour as dashes along the middle. */
export function ConductorLine({
  conductor,
  onHover,
  onPress,
}: {
  readonly conductor: SheetConductor;
  readonly onHover?: OnHover | undefined;
  /** By pointer only: the search and the T key do the same from the keyboard. */
  readonly onPress?: (() => void) | undefined;
}) {
  const points = conductor.points.map(({ x, y }) => `${x},${y}`).join(" ");
  const width = strokeWidth(conductor.squareMillimetres);
  const [base, stripe] = conductor.colour;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keyboard reaches a conductor by search and by its test points
    <g
      className={clsx(styles.conductor, onPress && styles.pressable)}
      data-conductor={conductor.id}
      onClick={onPress}
      {...(onHover && hoverHandlers(onHover))}
    >
      <polyline points={points} className={styles.conductorHit} />
      <polyline points={points} className={styles.outline} strokeWidth={width + 1.8} />
      <polyline
        points={points}
        className={styles.colour}
        strokeWidth={width}
        style={{ stroke: themedColour(base) }}
      />
      {stripe !== undefined && (
        <polyline
          points={points}
          className={styles.stripe}
          strokeWidth={Math.max(1.5, width * 0.45)}
          style={{ stroke: themedColour(stripe) }}
        />
      )}
    </g>
  );
}

/** The colour code beside the conductor; cross-section and number join it on paper. */
export function ConductorCode({ conductor }: { readonly conductor: SheetConductor }) {
  return conductor.labels.map((label) => (
    <text
      key={`${label.x} ${label.y}`}
      x={label.x}
      y={label.y}
      textAnchor={label.anchor}
      className={styles.code}
    >
      {label.lines.map((line, index) => (
        <tspan
          key={line}
          x={label.x}
          dy={index === 0 ? 0 : 13}
          className={index === 0 ? undefined : styles.extra}
        >
          {line}
        </tspan>
      ))}
    </text>
  ));
}
