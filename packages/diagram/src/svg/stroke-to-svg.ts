import type { Position } from "../geometry";
import type { Pen, Stroke } from "../strokes/stroke";
import { escapeXml } from "./escape";

const round = (value: number) => String(Math.round(value * 100) / 100);

/** `x,y x,y` for a polyline. */
const pointList = (points: readonly Position[]): string =>
  points.map(({ x, y }) => `${round(x)},${round(y)}`).join(" ");

const monoFamily = "IBM Plex Mono, DejaVu Sans Mono, monospace";
const sansFamily = "IBM Plex Sans, DejaVu Sans, sans-serif";

function outline(pen: Pen | undefined): string {
  if (pen === undefined) return "";
  const dash = pen.dash === undefined ? "" : ` stroke-dasharray="${pen.dash.join(" ")}"`;
  return ` stroke="${pen.colour}" stroke-width="${pen.width}"${dash}`;
}

/** SVG of one stroke or text; whatever is written is escaped. */
export function strokeToSvg(stroke: Stroke): string {
  switch (stroke.kind) {
    case "line":
      return `<polyline points="${pointList(stroke.points)}" fill="none"${outline(stroke.pen)}${stroke.isRounded === true ? ' stroke-linejoin="round"' : ""}/>`;
    case "rect":
      return `<rect x="${round(stroke.x)}" y="${round(stroke.y)}" width="${round(stroke.width)}" height="${round(stroke.height)}" fill="${stroke.fill ?? "none"}"${outline(stroke.pen)}/>`;
    case "circle":
      return `<circle cx="${round(stroke.x)}" cy="${round(stroke.y)}" r="${round(stroke.radius)}" fill="${stroke.fill ?? "none"}"${outline(stroke.pen)}/>`;
    case "path":
      return `<path d="${escapeXml(stroke.d)}" fill="${stroke.fill ?? "none"}"${outline(stroke.pen)}/>`;
    case "text": {
      const family = stroke.isMono ? monoFamily : sansFamily;
      const weight = stroke.isBold ? ' font-weight="600"' : "";
      return `<text x="${round(stroke.x)}" y="${round(stroke.y)}" font-family="${family}" font-size="${stroke.size}"${weight} text-anchor="${stroke.anchor}" fill="${stroke.colour}">${escapeXml(stroke.text)}</text>`;
    }
  }
}
