import type { Position, Primitive } from "../geometry";
import { textStyles } from "../text-size";
import { escapeXml } from "./escape";
import { fillAttribute, strokeAttributes, type ThemeColours } from "./theme";

const round = (value: number) => String(Math.round(value * 100) / 100);

/** `x,y x,y` for a polyline. */
export const pointList = (points: readonly Position[]): string =>
  points.map(({ x, y }) => `${round(x)},${round(y)}`).join(" ");

export const monoFamily = "IBM Plex Mono, DejaVu Sans Mono, monospace";
export const sansFamily = "IBM Plex Sans, DejaVu Sans, sans-serif";

/** One text element; `size` in px. */
export function svgText(
  { x, y }: Position,
  text: string,
  look: {
    readonly size: number;
    readonly isMono: boolean;
    readonly anchor: string;
    readonly colour: string;
    readonly isBold?: boolean;
  },
): string {
  const family = look.isMono ? monoFamily : sansFamily;
  const weight = look.isBold === true ? ' font-weight="600"' : "";
  return `<text x="${round(x)}" y="${round(y)}" font-family="${family}" font-size="${look.size}"${weight} text-anchor="${look.anchor}" fill="${look.colour}">${escapeXml(text)}</text>`;
}

/** SVG of one stroke or text of a symbol. */
export function primitiveToSvg(primitive: Primitive, colours: ThemeColours): string {
  switch (primitive.kind) {
    case "line":
      return `<polyline points="${pointList(primitive.points)}" fill="none" ${strokeAttributes(primitive.stroke, colours)}/>`;
    case "rect":
      return `<rect x="${round(primitive.x)}" y="${round(primitive.y)}" width="${round(primitive.width)}" height="${round(primitive.height)}" ${fillAttribute(primitive.fill, colours)} ${strokeAttributes(primitive.stroke, colours)}/>`;
    case "circle":
      return `<circle cx="${round(primitive.x)}" cy="${round(primitive.y)}" r="${round(primitive.radius)}" ${fillAttribute(primitive.fill, colours)} ${strokeAttributes(primitive.stroke, colours)}/>`;
    case "path":
      return `<path d="${escapeXml(primitive.d)}" ${fillAttribute(primitive.fill, colours)} ${strokeAttributes(primitive.stroke, colours)}/>`;
    case "text": {
      const style = textStyles[primitive.role];
      const quiet = primitive.role === "function" || primitive.role === "title";
      return svgText(primitive, primitive.text, {
        size: style.size,
        isMono: style.mono,
        anchor: primitive.anchor,
        colour: quiet ? colours.quiet : colours.ink,
        isBold: primitive.role === "designator",
      });
    }
  }
}
