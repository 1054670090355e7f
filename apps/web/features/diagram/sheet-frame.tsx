import { rowLetter, type Sheet } from "@probeworthy/diagram";
import styles from "./wiring-diagram.module.css";

/** The frame with zone numbers along top and bottom and zone letters down both sides (ISO 5457). */
export function SheetFrame({ sheet }: { readonly sheet: Sheet }) {
  const { frame, columns, rows } = sheet.zones;
  const right = frame.x + frame.width;
  const bottom = frame.y + frame.height;
  const column = frame.width / columns;
  const row = frame.height / rows;
  return (
    <g>
      <rect x={8} y={8} width={sheet.width - 16} height={sheet.height - 16} className={styles.frameLine} />
      <rect {...frame} className={styles.ink} />
      {Array.from({ length: columns }, (_, index) => String(index + 1)).map((name, index) => (
        <g key={name}>
          {[frame.y, sheet.height - 8].map((y) => (
            <g key={y}>
              {index > 0 && (
                <line
                  x1={frame.x + index * column}
                  x2={frame.x + index * column}
                  y1={y}
                  y2={y - 20}
                  className={styles.frameLine}
                />
              )}
              <text
                x={frame.x + (index + 0.5) * column}
                y={y - 6}
                textAnchor="middle"
                className={styles.zone}
              >
                {name}
              </text>
            </g>
          ))}
        </g>
      ))}
      {Array.from({ length: rows }, (_, index) => rowLetter(index)).map((name, index) => (
        <g key={name}>
          {[8, right].map((x) => (
            <g key={x}>
              {index > 0 && (
                <line
                  x1={x}
                  x2={x + 20}
                  y1={frame.y + index * row}
                  y2={frame.y + index * row}
                  className={styles.frameLine}
                />
              )}
              <text
                x={x + 10}
                y={frame.y + (index + 0.5) * row + 4}
                textAnchor="middle"
                className={styles.zone}
              >
                {name}
              </text>
            </g>
          ))}
        </g>
      ))}
      <path d={`M ${frame.x} ${bottom} H ${right}`} className={styles.ink} />
    </g>
  );
}
