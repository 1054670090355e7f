import type { Primitive } from "@probeworthy/diagram";
import styles from "./wiring-diagram.module.css";

const fills = { none: "", paper: styles.fillPaper, ink: styles.fillInk };

function draw(primitive: Primitive, key: number) {
  switch (primitive.kind) {
    case "line":
      return (
        <polyline
          key={key}
          points={primitive.points.map(({ x, y }) => `${x},${y}`).join(" ")}
          className={styles[primitive.stroke]}
        />
      );
    case "rect": {
      const { x, y, width, height, stroke, fill } = primitive;
      return <rect key={key} {...{ x, y, width, height }} className={`${styles[stroke]} ${fills[fill]}`} />;
    }
    case "circle": {
      const { x, y, radius, stroke, fill } = primitive;
      return <circle key={key} cx={x} cy={y} r={radius} className={`${styles[stroke]} ${fills[fill]}`} />;
    }
    case "path":
      return (
        <path key={key} d={primitive.d} className={`${styles[primitive.stroke]} ${fills[primitive.fill]}`} />
      );
    case "text":
      return (
        <text
          key={key}
          x={primitive.x}
          y={primitive.y}
          textAnchor={primitive.anchor}
          className={styles[primitive.role]}
        >
          {primitive.text}
        </text>
      );
  }
}

/** The strokes of a symbol, as the sheet lists them. Their order is fixed, so their index is their key. */
export function Primitives({ list }: { readonly list: readonly Primitive[] }) {
  return <>{list.map(draw)}</>;
}
