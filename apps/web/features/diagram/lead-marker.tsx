import styles from "./wiring-diagram.module.css";

/** A lead on a point: a round marker beside it with + or − inside, and a tip that touches the point. */
export function LeadMarker({
  lead,
  x,
  y,
  side,
}: {
  readonly lead: "red" | "black";
  readonly x: number;
  readonly y: number;
  readonly side: "top" | "bottom";
}) {
  const centreX = x + (lead === "red" ? 22 : -22);
  const centreY = y + (side === "top" ? -18 : 18);
  return (
    <g className={lead === "red" ? styles.leadRed : styles.leadBlack} pointerEvents="none" data-lead={lead}>
      <line
        x1={centreX}
        y1={centreY}
        x2={x}
        y2={y}
        className={styles.leadTip}
        stroke="#ffffff"
        strokeWidth={6}
      />
      <line x1={centreX} y1={centreY} x2={x} y2={y} className={`${styles.leadTip} ${styles.leadStroke}`} />
      <circle cx={x} cy={y} r={4} className={styles.leadCircle} />
      <circle cx={centreX} cy={centreY} r={12} className={styles.leadCircle} />
      <circle cx={centreX} cy={centreY} r={13} className={styles.leadHalo} />
      <path
        d={`M ${centreX - 5} ${centreY} H ${centreX + 5}${lead === "red" ? ` M ${centreX} ${centreY - 5} V ${centreY + 5}` : ""}`}
        className={styles.leadSign}
        fill="none"
      />
    </g>
  );
}
