import type { ComponentOf } from "@probeworthy/vehicle";
import type { Primitive } from "../geometry";
import { nameBlock } from "./component-shape";
import type { Slot } from "./draft";
import { layOutSide, type PlacedSlot, type Shape, shiftSide, stripHeight } from "./shape";
import { circle, line, text } from "./symbols/pieces";

const coreHeight = 92;
const radius = 12;

/** Two lamps in one bulb: each filament on its own leg, both on the common one. */
export function twoFilamentShape(
  lamp: ComponentOf<"twoFilamentLamp">,
  top: readonly Slot[],
  bottom: readonly Slot[],
): Shape {
  const { common, first, second } = lamp.terminals;
  // The filaments stand as their conductors come, the common leg on the right.
  const rank = (name: string) => [...top, ...bottom].findIndex((slot) => slot.name === name);
  const isTurned = rank(second) >= 0 && rank(second) < rank(first);
  const [leftOne, rightOne] = isTurned ? [second, first] : [first, second];
  const order = [leftOne, rightOne, common];
  const sorted = (slots: readonly Slot[]) =>
    [...slots].sort((a, b) => order.indexOf(a.name) - order.indexOf(b.name));
  const name = nameBlock(lamp);
  const left = name.width + 22;
  const above = shiftSide(layOutSide(sorted(top), "top", false), left);
  const below = shiftSide(layOutSide(sorted(bottom), "bottom", false), left);
  const placed = [...above.slots, ...below.slots];
  const strips = { top: stripHeight(top), bottom: stripHeight(bottom) };
  const y = strips.top;
  const foot = y + coreHeight;
  const slotOf = (terminal: string) => placed.find((slot) => slot.name === terminal);
  const [one, two, shared] = [slotOf(leftOne), slotOf(rightOne), slotOf(common)];
  const firstX = one?.x ?? left + 24;
  const secondX = Math.max(two?.x ?? 0, firstX + 36);
  const isFed = one?.side !== "bottom";
  const middle = y + coreHeight / 2 + (isFed ? -4 : 4);
  const bar = isFed ? middle + 22 : middle - 22;
  const width = Math.max(secondX + 30, ...placed.map((slot) => slot.x + 30));
  const bulb = (x: number): Primitive[] => [
    circle(x, middle, radius),
    line("ink", [x - 8.5, middle - 8.5], [x + 8.5, middle + 8.5]),
    line("ink", [x - 8.5, middle + 8.5], [x + 8.5, middle - 8.5]),
  ];
  const lead = (slot: PlacedSlot | undefined, x: number, end: number): Primitive[] => {
    if (slot === undefined) return [];
    const edge = slot.side === "top" ? y : foot;
    const level = slot.side === "top" ? y + 16 : foot - 16;
    return [line("ink", [slot.x, edge], [slot.x, level], [x, level], [x, end])];
  };
  const near = isFed ? middle - radius : middle + radius;
  const far = isFed ? middle + radius : middle - radius;
  const primitives: Primitive[] = [
    line(
      "dashed",
      [firstX - 20, middle - 26],
      [secondX + 20, middle - 26],
      [secondX + 20, middle + 26],
      [firstX - 20, middle + 26],
      [firstX - 20, middle - 26],
    ),
    ...lead(one, firstX, near),
    ...lead(two, secondX, near),
    ...bulb(firstX),
    ...bulb(secondX),
    line("ink", [firstX, far], [firstX, bar], [secondX, bar], [secondX, far]),
    ...lead(shared, shared?.x ?? firstX, bar),
    ...placed.map((slot) => text(slot.x + 5, slot.side === "top" ? y + 10 : foot - 3, slot.name, "cavity")),
    ...name.draw(left - 6, y + coreHeight / 2),
  ];
  return {
    width,
    height: strips.top + coreHeight + strips.bottom,
    slots: placed,
    groups: [...above.groups, ...below.groups],
    strips,
    core: { x: firstX - 22, y, width: Math.max(secondX, shared?.x ?? 0) - firstX + 44, height: coreHeight },
    primitives,
  };
}
