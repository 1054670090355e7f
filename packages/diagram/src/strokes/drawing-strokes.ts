import { displayColour } from "../colours";
import type { Sheet, SheetConductor } from "../geometry";
import { connectorStrokes } from "./connector-strokes";
import { frameStrokes, type TitleBlock, titleBlockHeight } from "./frame-strokes";
import { primitiveStroke } from "./primitive-strokes";
import { type Stroke, textStroke } from "./stroke";
import { penOf, type SvgTheme, type ThemeColours, themes } from "./theme";

export type { SvgTheme, TitleBlock };

export interface DrawingOptions {
  readonly theme: SvgTheme;
  /** Colour of the sheet, where it is not to be that of the theme: white, so that a printer leaves it alone. */
  readonly paper?: string;
  /** Absent: no title block, and the sheet is as high as its drawing. */
  readonly titleBlock?: TitleBlock;
}

/** A drawing ready to be put on paper; lengths in px. */
export interface PaperDrawing {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly strokes: readonly Stroke[];
}

/** Drawn thickness of a conductor, px. */
const thickness = (squareMillimetres: number) => Math.min(6.5, 2.6 + Math.sqrt(squareMillimetres) * 0.7);

function conductorStrokes(
  conductor: SheetConductor,
  theme: SvgTheme,
  colours: ThemeColours,
): readonly Stroke[] {
  const width = thickness(conductor.squareMillimetres);
  const [base, stripe] = conductor.colour;
  const stroke = (colour: string, wide: number, dash?: readonly number[]): Stroke => ({
    kind: "line",
    points: conductor.points,
    isRounded: true,
    pen: { colour, width: wide, ...(dash === undefined ? {} : { dash }) },
  });
  return [
    stroke(colours.ink, width + 1.8),
    stroke(displayColour(base)[theme], width),
    ...(stripe === undefined
      ? []
      : [stroke(displayColour(stripe)[theme], Math.max(1.5, width * 0.45), [9, 7])]),
  ];
}

function labelStrokes(conductor: SheetConductor, colours: ThemeColours): readonly Stroke[] {
  return conductor.labels.flatMap(({ x, y, anchor, lines }) =>
    lines.map((line, index) =>
      textStroke({ x, y: y + index * 13 }, line, {
        size: 11,
        isMono: true,
        anchor,
        colour: index === 0 ? colours.ink : colours.quiet,
        isBold: index === 0,
      }),
    ),
  );
}

/** A sheet as strokes: paper, frame with zones, title block, drawing. Fuses are drawn fitted, connectors mated. */
export function drawingStrokes(sheet: Sheet, { theme, paper, titleBlock }: DrawingOptions): PaperDrawing {
  const colours = { ...themes[theme], ...(paper === undefined ? {} : { paper }) };
  const height = sheet.height + (titleBlock === undefined ? 0 : titleBlockHeight(titleBlock));
  const strokes: readonly Stroke[] = [
    { kind: "rect", x: 0, y: 0, width: sheet.width, height, fill: colours.paper },
    ...frameStrokes(sheet, height, titleBlock, colours),
    ...sheet.links.map(({ points }): Stroke => ({ kind: "line", points, pen: penOf("ink", colours) })),
    ...sheet.conductors.flatMap((conductor) => conductorStrokes(conductor, theme, colours)),
    ...sheet.connectors.flatMap((connector) => connectorStrokes(connector, colours)),
    ...[...sheet.symbols, ...(sheet.references ?? []), ...(sheet.twists ?? [])].flatMap((drawn) =>
      [...drawn.primitives, ...("fitted" in drawn ? (drawn.fitted ?? []) : [])].map((piece) =>
        primitiveStroke(piece, colours),
      ),
    ),
    ...sheet.conductors.flatMap((conductor) => labelStrokes(conductor, colours)),
  ];
  return { title: titleBlock?.title ?? sheet.title, width: sheet.width, height, strokes };
}
