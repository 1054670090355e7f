import type { Primitive } from "../geometry";
import { textWidth, wrapText } from "../text-size";
import type { Slot } from "./draft";
import type { GroundPointText } from "./node-shape";
import type { PlacedSlot, Shape } from "./shape";
import { circle, line, text } from "./symbols/pieces";

const pitch = 48;
/** Where a bar lies below the node's upper edge, px. */
export const barDepth = 12;

/** A slot that already has its place keeps it. */
type BarSlot = Slot & { readonly x?: number };

function placeAcross(slots: readonly BarSlot[], left: number, count: number): readonly PlacedSlot[] {
  const span = (count - 1) * pitch;
  return slots.map((slot, index) => ({
    ...slot,
    x: slot.x ?? Math.round(left + (span - (slots.length - 1) * pitch) / 2 + index * pitch),
  }));
}

/** A splice or a shared stud: a short thick line with a dot where each conductor joins. */
export function shapeBar(designator: string, slots: readonly BarSlot[]): Shape {
  const top = slots.filter((slot) => slot.side === "top");
  const bottom = slots.filter((slot) => slot.side === "bottom");
  const count = Math.max(top.length, bottom.length, 1);
  const label = designator === "" ? 12 : textWidth(designator, "designator") + 18;
  const placed = [...placeAcross(top, label, count), ...placeAcross(bottom, label, count)];
  const xs = placed.map((slot) => slot.x);
  const from = Math.min(...xs);
  const to = Math.max(...xs);
  const primitives: Primitive[] = [
    ...(to > from ? [line("rail", [from, barDepth], [to, barDepth])] : []),
    ...placed.map((slot) => circle(slot.x, barDepth, 3.5, "ink")),
    ...(designator === "" ? [] : [text(from - 12, barDepth + 4, designator, "designator", "end")]),
  ];
  return {
    width: label + (count - 1) * pitch + 12,
    height: 2 * barDepth,
    slots: placed,
    groups: [],
    strips: { top: barDepth, bottom: barDepth },
    core: { x: from, y: barDepth, width: to - from, height: 0 },
    primitives,
  };
}

/** Where the ring terminal and the bare metal of a ground point lie, px below the node's upper edge. */
export const ringDepth = 14;
export const bareMetalDepth = 52;

/** A ground point: the ring terminal under its bolt, then the earth symbol, its designator and where it is. */
export function shapeGround(ground: GroundPointText, slots: readonly BarSlot[]): Shape {
  const titles = wrapText(ground.title, 16);
  const label = Math.max(
    textWidth(ground.id, "designator"),
    ...titles.map((each) => textWidth(each, "title")),
  );
  const left = label + 34;
  const placed = placeAcross(slots, left, slots.length);
  const xs = placed.map((slot) => slot.x);
  const from = Math.min(...xs);
  const to = Math.max(...xs);
  const middle = Math.round((from + to) / 2);
  const y = bareMetalDepth;
  const primitives: Primitive[] = [
    ...(to > from ? [line("rail", [from, ringDepth], [to, ringDepth])] : []),
    ...(to > from ? placed.map((slot) => circle(slot.x, ringDepth, 3.5, "ink")) : []),
    line("ink", [middle, ringDepth], [middle, y]),
    line("ink", [middle - 16, y], [middle + 16, y]),
    line("ink", [middle - 10, y + 6], [middle + 10, y + 6]),
    line("ink", [middle - 4, y + 12], [middle + 4, y + 12]),
    text(middle - 26, y - 6 - 14 * (titles.length - 1), ground.id, "designator", "end"),
    ...titles.map((each, index) =>
      text(middle - 26, y + 8 + 14 * (index - titles.length + 1), each, "title", "end"),
    ),
  ];
  return {
    width: Math.max(to + 24, middle + 40),
    height: y + 24,
    slots: placed,
    groups: [],
    strips: { top: ringDepth, bottom: 0 },
    core: {
      x: Math.min(from, middle - 16),
      y: ringDepth,
      width: Math.max(to, middle + 16) - Math.min(from, middle - 16),
      height: y + 12 - ringDepth,
    },
    primitives,
  };
}
