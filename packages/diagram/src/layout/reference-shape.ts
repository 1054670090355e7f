import type { Primitive } from "../geometry";
import { textWidth, wrapText } from "../text-size";
import type { Slot } from "./draft";
import type { OutsideLink } from "./select-conductors";
import type { PlacedSlot, Shape } from "./shape";
import { path, text } from "./symbols/pieces";

/** How far a line runs into the reference before it meets the arrow, px. */
export const referenceDepth = 4;
const arrow = 12;
const textRoom = 10;
/** Between the arrow's outer edge and the words. */
const lineStep = 13;

/** What a reference says: designator and terminal, then the sheet. */
export function referenceLines(link: OutsideLink, title: string): readonly string[] {
  const further = link.systems.length - 1;
  const place = link.terminal === undefined ? link.designator : `${link.designator} · ${link.terminal}`;
  return [place, ...wrapText(`${title}${further > 0 ? ` +${further}` : ""}`, 20)];
}

/** An arrow that points away from the conductor, its words beyond the tip. */
export function shapeReference(link: OutsideLink, title: string, slots: readonly Slot[]): Shape {
  const lines = referenceLines(link, title);
  const width =
    Math.max(...lines.map((each, index) => textWidth(each, index === 0 ? "terminal" : "function"))) + 8;
  const height = referenceDepth + arrow + textRoom + lines.length * lineStep + 2;
  const middle = Math.round(width / 2);
  const isBelow = slots[0]?.side !== "bottom";
  const tip = isBelow ? referenceDepth + arrow : height - referenceDepth - arrow;
  const base = isBelow ? referenceDepth : height - referenceDepth;
  const first = isBelow ? referenceDepth + arrow + textRoom + 4 : lineStep - 1;
  const placed: readonly PlacedSlot[] = slots.map((slot) => ({ ...slot, x: middle }));
  const primitives: Primitive[] = [
    path(`M ${middle - 6} ${base} L ${middle + 6} ${base} L ${middle} ${tip} Z`, "ink"),
    ...lines.map((each, index) =>
      text(middle, first + index * lineStep, each, index === 0 ? "terminal" : "function", "middle"),
    ),
  ];
  return {
    width,
    height,
    slots: placed,
    groups: [],
    strips: { top: referenceDepth, bottom: referenceDepth },
    core: { x: 0, y: isBelow ? referenceDepth : 0, width, height: height - referenceDepth },
    primitives,
  };
}
