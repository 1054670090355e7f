import { type ComponentOf, relayTerminals } from "@probeworthy/vehicle";
import type { Primitive } from "../geometry";
import { nameBlock } from "./component-shape";
import type { Slot } from "./draft";
import { layOutSide, type PlacedSlot, type Shape, shiftSide, stripHeight } from "./shape";
import { circle, line, rectangle, text } from "./symbols/pieces";

const coreHeight = 104;
const lineStep = 14;

/** True when coil and contact can be drawn upright: each with one end above and one below. */
export function isUprightRelay(relay: ComponentOf<"relay">, slots: readonly Slot[]): boolean {
  const { coilPlus, coilMinus, common, make, break: rest } = relayTerminals(relay);
  const side = (terminal: string | undefined) => slots.find((slot) => slot.name === terminal)?.side;
  const isApart = (one: string, other: string | undefined) =>
    other === undefined || side(one) === undefined || side(one) !== side(other);
  return isApart(coilPlus, coilMinus) && isApart(common, make) && isApart(common, rest);
}

/** Coil at the left, contact at the right, joined by the dashed line of the mechanical link (manner of IEC 60617). */
export function relayShape(relay: ComponentOf<"relay">, slots: readonly Slot[], isPartial: boolean): Shape {
  const { coilPlus, coilMinus, common, make, break: rest } = relayTerminals(relay);
  const order = [coilPlus, coilMinus, common, rest ?? "", make];
  const rank = (slot: Slot) => order.indexOf(slot.name);
  const groupRank = (slot: Slot) =>
    slot.connector === undefined
      ? rank(slot)
      : Math.min(...slots.filter((other) => other.connector === slot.connector).map(rank));
  const sorted = [...slots].sort((a, b) => groupRank(a) - groupRank(b) || rank(a) - rank(b));
  const name = nameBlock(relay);
  const left = name.width + 26;
  const sideOf = (side: "top" | "bottom") =>
    shiftSide(
      layOutSide(
        sorted.filter((slot) => slot.side === side),
        side,
        false,
      ),
      left,
    );
  const [above, below] = [sideOf("top"), sideOf("bottom")];
  const placed = [...above.slots, ...below.slots];
  const strips = { top: stripHeight(above.slots), bottom: stripHeight(below.slots) };
  const y = strips.top;
  const foot = y + coreHeight;
  const right = Math.max(left + 128, ...placed.map((slot) => slot.x + 30));
  const coilX = Math.max(left + 22, Math.min(...placed.filter(isCoil).map((slot) => slot.x)));
  const restSlot = placed.find((slot) => slot.name === rest);
  const contacts = placed.filter((slot) => !isCoil(slot)).map(({ x }) => x);
  const contactX = Math.max(coilX + 66, restSlot === undefined ? Math.min(...contacts) : restSlot.x + 16);
  const middle = y + coreHeight / 2;
  const width = Math.max(right, contactX + 44) + 4;

  function isCoil(slot: Slot): boolean {
    return slot.name === coilPlus || slot.name === coilMinus;
  }
  const slotOf = (terminal: string | undefined) => placed.find((slot) => slot.name === terminal);
  /** From a slot along a track of its own to the part it belongs to. */
  const lead = (slot: PlacedSlot | undefined, x: number, end: number, track: number): Primitive[] => {
    if (slot === undefined) return [];
    const edge = slot.side === "top" ? y : foot;
    const level = slot.side === "top" ? y + track : foot - track;
    return [line("ink", [slot.x, edge], [slot.x, level], [x, level], [x, end])];
  };
  const nameAt = (slot: PlacedSlot) =>
    text(slot.x + 5, slot.side === "top" ? y + 11 : foot - 4, slot.name, "cavity");

  const plusIsTop = slotOf(coilPlus)?.side !== "bottom";
  const commonIsTop = slotOf(common)?.side !== "bottom";
  const [coilTop, coilFoot] = plusIsTop ? [coilPlus, coilMinus] : [coilMinus, coilPlus];
  const up = commonIsTop ? 1 : -1;
  const pivot = middle - up * 16;
  const contact = middle + up * 14;
  const breakX = contactX - 16;
  const suppressor: Primitive[] =
    relay.suppressor === undefined || relay.suppressor === "none"
      ? []
      : [
          line(
            "fine",
            [coilX, middle - 20],
            [coilX - 30, middle - 20],
            [coilX - 30, middle + 20],
            [coilX, middle + 20],
          ),
          ...(relay.suppressor === "resistor"
            ? [rectangle(coilX - 34, middle - 10, 8, 20, "paper", "fine")]
            : diode(coilX - 30, middle, plusIsTop)),
        ];
  const primitives: Primitive[] = [
    rectangle(left - 14, y, width - left + 12, coreHeight, "paper", "fine"),
    ...suppressor,
    ...lead(slotOf(coilTop), coilX, middle - 11, 20),
    ...lead(slotOf(coilFoot), coilX, middle + 11, 20),
    rectangle(coilX - 15, middle - 11, 30, 22),
    line("ink", [coilX + 15, middle - 11], [coilX - 15, middle + 11]),
    line("dashed", [coilX + 15, middle], [contactX - 7, middle]),
    ...lead(slotOf(common), contactX, pivot, 16),
    line("ink", [contactX, pivot], [rest === undefined ? contactX - 12 : breakX + 2, contact - up * 3]),
    circle(contactX, pivot, 2.5),
    circle(contactX, contact, 2.5),
    ...lead(slotOf(make), contactX, contact, 16),
    ...(rest === undefined ? [] : [circle(breakX, contact, 2.5), ...lead(slotOf(rest), breakX, contact, 24)]),
    ...placed.map(nameAt),
    ...name.draw(left - 22, isPartial ? middle - 7 : middle),
    ...(isPartial
      ? [
          text(
            left - 22,
            middle + (name.lines.length / 2) * lineStep + 6,
            "more on other sheets",
            "function",
            "end" as const,
          ),
        ]
      : []),
  ];
  return {
    width,
    height: strips.top + coreHeight + strips.bottom,
    slots: placed,
    groups: [...above.groups, ...below.groups],
    strips,
    core: { x: left - 14, y, width: width - left + 12, height: coreHeight },
    primitives,
  };
}

/** Cathode at the coil's plus. */
function diode(x: number, y: number, isPlusAbove: boolean): Primitive[] {
  const up = isPlusAbove ? -1 : 1;
  return [
    line("fine", [x - 6, y - up * 5], [x + 6, y - up * 5], [x, y + up * 5], [x - 6, y - up * 5]),
    line("ink", [x - 6, y + up * 5], [x + 6, y + up * 5]),
  ];
}
