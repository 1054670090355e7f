import type { Sheet } from "../geometry";
import { type DrawingOptions, drawingStrokes } from "../strokes/drawing-strokes";
import { escapeXml } from "./escape";
import { strokeToSvg } from "./stroke-to-svg";

/** A type that travels inside the file, as a WOFF2 in base64. */
export interface EmbeddedFont {
  readonly family: string;
  readonly weight: 400 | 600;
  readonly base64: string;
}

export interface SvgOptions extends DrawingOptions {
  /** Absent: types by name, so that the drawing looks as meant only where they are installed. */
  readonly fonts?: readonly EmbeddedFont[];
}

function fontFaces(fonts: readonly EmbeddedFont[]): string {
  const faces = fonts.map(
    ({ family, weight, base64 }) =>
      `@font-face{font-family:"${family}";font-weight:${weight};src:url(data:font/woff2;base64,${base64}) format("woff2")}`,
  );
  return faces.length === 0 ? "" : `<style>${escapeXml(faces.join("")).replaceAll("&quot;", '"')}</style>`;
}

/**
 * A sheet as a stand-alone SVG document: colours inlined, types by name or embedded, frame with zones, title block.
 * Everything written is escaped. Fuses are drawn fitted, connectors mated.
 */
export function drawingToSvg(sheet: Sheet, { fonts = [], ...options }: SvgOptions): string {
  const { title, width, height, strokes } = drawingStrokes(sheet, options);
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img"><title>${escapeXml(title)}</title>${fontFaces(fonts)}${strokes.map(strokeToSvg).join("")}</svg>\n`;
}
