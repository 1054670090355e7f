import type { SheetCavity, SheetConnector } from "@probeworthy/diagram";
import styles from "./wiring-diagram.module.css";

/** How far each half of the boundary moves while the connector is apart, px. */
const apartBy = 8;

/** A pin into a socket: the arc is the socket on the harness side, the thick stroke the pin that faces it. */
function Contact({
  cavity,
  boundary,
  isApart,
  isInline,
}: {
  readonly cavity: SheetCavity;
  readonly boundary: number;
  readonly isApart: boolean;
  readonly isInline: boolean;
}) {
  const { x, harness, facing } = cavity;
  const out = Math.sign(harness.y - facing.y);
  const shift = isApart ? apartBy * out : 0;
  const socket = boundary + shift + (isApart ? out * 2 : 0);
  const pin = boundary - shift - out * (isApart ? 0 : -1);
  return (
    <>
      <line x1={x} y1={harness.y} x2={x} y2={socket + out * 5} className={styles.ink} />
      <path
        d={`M ${x - 5} ${socket} A 5 5 0 0 ${out > 0 ? 0 : 1} ${x + 5} ${socket}`}
        className={styles.ink}
      />
      <line x1={x} y1={isInline ? facing.y : facing.y - out * 14} x2={x} y2={pin} className={styles.ink} />
      <line x1={x} y1={pin - out * 9} x2={x} y2={pin} className={styles.rail} />
      <text x={x + 8} y={boundary - shift - out * 9 + 4} className={styles.cavity}>
        {cavity.cavity}
      </text>
    </>
  );
}

/** The boundary between two connector faces, one dashed line while mated, two with a gap while apart. */
export function ConnectorBoundary({ connector, isApart }: { connector: SheetConnector; isApart: boolean }) {
  const { from, to, cavities } = connector;
  const first = cavities[0];
  const out = first === undefined ? -1 : Math.sign(first.harness.y - first.facing.y);
  const lines = isApart ? [from.y + out * apartBy, from.y - out * apartBy] : [from.y];
  return (
    <g>
      {lines.map((y) => (
        <line key={y} x1={from.x} y1={y} x2={to.x} y2={y} className={styles.dashed} />
      ))}
      {cavities.map((cavity) => (
        <Contact
          key={cavity.cavity}
          cavity={cavity}
          boundary={from.y}
          isApart={isApart}
          isInline={connector.inline}
        />
      ))}
    </g>
  );
}
