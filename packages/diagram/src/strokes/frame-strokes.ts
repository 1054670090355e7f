import type { Sheet } from "../geometry";
import { rowLetter } from "../zones";
import { type Stroke, textStroke } from "./stroke";
import { penOf, type ThemeColours } from "./theme";

/** What stands in the title block, line by line: label and value. */
export interface TitleBlock {
  /** What the sheet shows; drawn large. */
  readonly title: string;
  readonly lines: readonly { readonly label: string; readonly value: string }[];
}

const rowHeight = 20;
const headHeight = 30;

export const titleBlockHeight = (block: TitleBlock): number => headHeight + block.lines.length * rowHeight;

/** Frame with zone numbers and letters after ISO 5457, title block at the lower right below the drawing. */
export function frameStrokes(
  sheet: Sheet,
  height: number,
  block: TitleBlock | undefined,
  colours: ThemeColours,
): readonly Stroke[] {
  const { frame, columns, rows } = sheet.zones;
  const [right, foot] = [frame.x + frame.width, height - frame.y];
  const column = frame.width / columns;
  const row = frame.height / rows;
  const rule = (x1: number, y1: number, x2: number, y2: number): Stroke => ({
    kind: "line",
    pen: penOf("fine", colours),
    points: [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ],
  });
  const look = { size: 11, isMono: true, anchor: "middle" as const, colour: colours.quiet };
  const parts: Stroke[] = [
    {
      kind: "rect",
      x: 8,
      y: 8,
      width: sheet.width - 16,
      height: height - 16,
      pen: penOf("fine", colours),
    },
    {
      kind: "rect",
      x: frame.x,
      y: frame.y,
      width: frame.width,
      height: foot - frame.y,
      pen: penOf("ink", colours),
    },
  ];
  for (let index = 0; index < columns; index += 1) {
    const x = frame.x + index * column;
    for (const y of [8, foot]) {
      if (index > 0) parts.push(rule(x, y, x, y + 20));
      parts.push(textStroke({ x: x + column / 2, y: y + 14 }, String(index + 1), look));
    }
  }
  for (let index = 0; index < rows; index += 1) {
    const y = frame.y + index * row;
    for (const x of [8, right]) {
      if (index > 0) parts.push(rule(x, y, x + 20, y));
      parts.push(textStroke({ x: x + 10, y: y + row / 2 + 4 }, rowLetter(index), look));
    }
  }
  if (block !== undefined) {
    const width = Math.min(440, frame.width);
    const left = right - width;
    const top = foot - titleBlockHeight(block);
    parts.push(
      {
        kind: "rect",
        x: left,
        y: top,
        width,
        height: titleBlockHeight(block),
        fill: colours.paper,
        pen: penOf("ink", colours),
      },
      textStroke({ x: left + 10, y: top + 21 }, block.title, {
        size: 16,
        isMono: false,
        anchor: "start",
        colour: colours.ink,
        isBold: true,
      }),
    );
    block.lines.forEach(({ label, value }, index) => {
      const y = top + headHeight + index * rowHeight;
      parts.push(
        rule(left, y, right, y),
        textStroke({ x: left + 10, y: y + 14 }, label, { ...look, isMono: false, anchor: "start" }),
        textStroke({ x: left + 120, y: y + 14 }, value, {
          size: 12,
          isMono: false,
          anchor: "start",
          colour: colours.ink,
        }),
      );
    });
  }
  return parts;
}
