import { displayColour } from "../colours";
import type { Sheet, SheetConductor } from "../geometry";
import { connectorToSvg } from "./connector-to-svg";
import { escapeXml } from "./escape";
import { frameToSvg, type TitleBlock, titleBlockHeight } from "./frame-to-svg";
import { pointList, primitiveToSvg, svgText } from "./primitives-to-svg";
import { type SvgTheme, type ThemeColours, themes } from "./theme";

export type { SvgTheme, TitleBlock };

export interface SvgOptions {
  readonly theme: SvgTheme;
  /** Absent: no title block, and the sheet is as high as its drawing. */
  readonly titleBlock?: TitleBlock;
}

/** Drawn thickness of a conductor, px. */
const thickness = (squareMillimetres: number) => Math.min(6.5, 2.6 + Math.sqrt(squareMillimetres) * 0.7);

function conductorToSvg(conductor: SheetConductor, theme: SvgTheme, colours: ThemeColours): string {
  const points = pointList(conductor.points);
  const width = thickness(conductor.squareMillimetres);
  const [base, stripe] = conductor.colour;
  const stroke = (colour: string, wide: number, more = "") =>
    `<polyline points="${points}" fill="none" stroke="${colour}" stroke-width="${wide}" stroke-linejoin="round"${more}/>`;
  return [
    stroke(colours.ink, width + 1.8),
    stroke(displayColour(base)[theme], width),
    ...(stripe === undefined
      ? []
      : [stroke(displayColour(stripe)[theme], Math.max(1.5, width * 0.45), ' stroke-dasharray="9 7"')]),
  ].join("");
}

function labelsToSvg(conductor: SheetConductor, colours: ThemeColours): string {
  return conductor.labels
    .flatMap(({ x, y, anchor, lines }) =>
      lines.map((line, index) =>
        svgText({ x, y: y + index * 13 }, line, {
          size: 11,
          isMono: true,
          anchor,
          colour: index === 0 ? colours.ink : colours.quiet,
          isBold: index === 0,
        }),
      ),
    )
    .join("");
}

/**
 * A sheet as a stand-alone SVG document: colours inlined, fonts by name, frame with zones, title block. Everything
 * written is escaped. Fuses are drawn fitted, connectors mated.
 */
export function drawingToSvg(sheet: Sheet, { theme, titleBlock }: SvgOptions): string {
  const colours = themes[theme];
  const height = sheet.height + (titleBlock === undefined ? 0 : titleBlockHeight(titleBlock));
  const body = [
    `<rect width="${sheet.width}" height="${height}" fill="${colours.paper}"/>`,
    frameToSvg(sheet, height, titleBlock, colours),
    ...sheet.links.map(
      ({ points }) =>
        `<polyline points="${pointList(points)}" fill="none" stroke="${colours.ink}" stroke-width="1.6"/>`,
    ),
    ...sheet.conductors.map((conductor) => conductorToSvg(conductor, theme, colours)),
    ...sheet.connectors.map((connector) => connectorToSvg(connector, colours)),
    ...sheet.symbols.flatMap((symbol) =>
      [...symbol.primitives, ...(symbol.fitted ?? [])].map((piece) => primitiveToSvg(piece, colours)),
    ),
    ...[...(sheet.references ?? []), ...(sheet.twists ?? [])].flatMap(({ primitives }) =>
      primitives.map((piece) => primitiveToSvg(piece, colours)),
    ),
    ...sheet.conductors.map((conductor) => labelsToSvg(conductor, colours)),
  ];
  const title = escapeXml(titleBlock?.title ?? sheet.title);
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" width="${sheet.width}" height="${height}" viewBox="0 0 ${sheet.width} ${height}" role="img"><title>${title}</title>${body.join("")}</svg>\n`;
}
