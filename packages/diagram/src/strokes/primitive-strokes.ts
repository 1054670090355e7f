import type { Primitive } from "../geometry";
import { textStyles } from "../text-size";
import { type Stroke, textStroke } from "./stroke";
import { fillOf, penOf, type ThemeColours } from "./theme";

/** One stroke or text of a symbol, in the colours of a theme. */
export function primitiveStroke(primitive: Primitive, colours: ThemeColours): Stroke {
  switch (primitive.kind) {
    case "line":
      return { kind: "line", points: primitive.points, pen: penOf(primitive.stroke, colours) };
    case "rect": {
      const { x, y, width, height } = primitive;
      const look = { ...fillOf(primitive.fill, colours), pen: penOf(primitive.stroke, colours) };
      return { kind: "rect", x, y, width, height, ...look };
    }
    case "circle": {
      const { x, y, radius } = primitive;
      const look = { ...fillOf(primitive.fill, colours), pen: penOf(primitive.stroke, colours) };
      return { kind: "circle", x, y, radius, ...look };
    }
    case "path": {
      const look = { ...fillOf(primitive.fill, colours), pen: penOf(primitive.stroke, colours) };
      return { kind: "path", d: primitive.d, ...look };
    }
    case "text": {
      const style = textStyles[primitive.role];
      const isQuiet = primitive.role === "function" || primitive.role === "title";
      return textStroke(primitive, primitive.text, {
        size: style.size,
        isMono: style.mono,
        anchor: primitive.anchor,
        colour: isQuiet ? colours.quiet : colours.ink,
        isBold: primitive.role === "designator",
      });
    }
  }
}
