import type { Component } from "@probeworthy/vehicle";
import type { Primitive } from "../geometry";
import { textWidth, wrapText } from "../text-size";
import { isBox, type Slot } from "./draft";
import { isUprightRelay, relayShape } from "./relay-shape";
import { functionLines, layOutSide, type Shape, type SideLayout, shiftSide, stripHeight } from "./shape";
import { glyphsOf } from "./symbols/glyphs";
import { circle, line, rectangle, text } from "./symbols/pieces";
import { drawTwoPole, pulledFuseShift } from "./symbols/two-pole";
import { twoFilamentShape } from "./two-filament-shape";

const lineStep = 14;

/** A rating worth reading on the sheet. */
function rating(component: Component): string | undefined {
  if (component.kind === "twoFilamentLamp") return `${component.firstWatts}/${component.secondWatts} W`;
  if (component.kind === "fuse") return `${component.ratingAmps} A`;
  if (component.kind === "lamp") return `${component.ratedVolts} V ${component.ratedWatts} W`;
  if (component.kind === "ledLamp") return `${component.ratedVolts} V ${component.ratedAmps} A`;
  if (component.kind === "resistor") return component.form === "horn" ? undefined : `${component.ohms} Ω`;
  return undefined;
}

/** Measures and draws a component whose slots are already in order on each side. */
export function shapeComponent(component: Component, slots: readonly Slot[], isPartial = false): Shape {
  const top = slots.filter((slot) => slot.side === "top");
  const bottom = slots.filter((slot) => slot.side === "bottom");
  if (isBox(component)) return boxShape(component, top, bottom, isPartial);
  if (component.kind === "relay") {
    return isUprightRelay(component, slots)
      ? relayShape(component, slots, isPartial)
      : boxShape(component, top, bottom, isPartial);
  }
  if (component.kind === "twoFilamentLamp") return twoFilamentShape(component, top, bottom);
  if (component.kind === "chargingSource" && slots.length > 2)
    return boxShape(component, top, bottom, isPartial);
  if (top.length === 1 && bottom.length === 1) return poleShape(component, top, bottom);
  if ((top.length === 2 && bottom.length === 0) || (top.length === 0 && bottom.length === 2)) {
    return poleShape(component, top, bottom);
  }
  if (component.kind === "switch" && top.length === 1) return switchShape(component, top, bottom);
  return boxShape(component, top, bottom, isPartial);
}

export function nameBlock(component: Component): {
  lines: readonly string[];
  width: number;
  draw: (right: number, middle: number) => Primitive[];
} {
  const words = wrapText(component.title, 15);
  const value = rating(component);
  const lines = [component.id, ...words, ...(value === undefined ? [] : [value])];
  const roleOf = (index: number) =>
    index === 0 ? "designator" : index === lines.length - 1 && value !== undefined ? "rating" : "title";
  return {
    lines,
    width: Math.max(...lines.map((each, index) => textWidth(each, roleOf(index)))),
    draw: (right, middle) =>
      lines.map((each, index) =>
        text(
          right,
          Math.round(middle + 4 + (index - (lines.length - 1) / 2) * lineStep),
          each,
          roleOf(index),
          "end",
        ),
      ),
  };
}

const middleOf = (layout: SideLayout) => {
  const first = layout.slots[0];
  const last = layout.slots.at(-1);
  return first === undefined || last === undefined ? 0 : (first.x + last.x) / 2;
};

function poleShape(component: Component, top: readonly Slot[], bottom: readonly Slot[]): Shape {
  const name = nameBlock(component);
  const isVertical = top.length === bottom.length;
  const above = layOutSide(top, "top", false);
  const below = layOutSide(bottom, "bottom", false);
  const reach = !isVertical ? 34 : component.kind === "switch" ? 32 : 22;
  const centre = Math.ceil(Math.max(name.width + reach, middleOf(above), middleOf(below)));
  const topSide = shiftSide(above, centre - middleOf(above));
  const bottomSide = shiftSide(below, centre - middleOf(below));
  const rightSlack = component.kind === "fuse" ? pulledFuseShift + 14 : 24;
  const width = Math.max(
    centre + rightSlack,
    centre + above.width - middleOf(above),
    centre + below.width - middleOf(below),
  );
  const coreHeight = Math.max(60, name.lines.length * lineStep + 6);
  const strips = { top: stripHeight(top), bottom: stripHeight(bottom) };
  const y = strips.top;
  const middle = y + coreHeight / 2;
  const sides = isVertical ? [] : [...topSide.slots, ...bottomSide.slots];
  const [left, right] = sides;
  const drawing =
    left === undefined || right === undefined
      ? drawTwoPole(component, { x: centre, y, length: coreHeight, isVertical: true })
      : drawTwoPole(component, { x: left.x, y: middle, length: right.x - left.x, isVertical: false });
  const edge = top.length > 0 ? y : y + coreHeight;
  const legs = sides.map((slot) => line("ink", [slot.x, edge], [slot.x, middle]));
  const half = isVertical ? 18 : 26;
  return {
    width: Math.ceil(width),
    height: strips.top + coreHeight + strips.bottom,
    slots: [...topSide.slots, ...bottomSide.slots],
    groups: [...topSide.groups, ...bottomSide.groups],
    strips,
    core: { x: centre - half, y, width: 2 * half, height: coreHeight },
    primitives: [
      ...drawing.always,
      ...legs,
      ...name.draw(centre - reach, middle),
      ...poleNames(component, [...topSide.slots, ...bottomSide.slots], y, coreHeight),
    ],
    ...(drawing.fitted === undefined ? {} : { fitted: drawing.fitted }),
    ...(drawing.pulled === undefined ? {} : { pulled: drawing.pulled }),
  };
}

/** Terminal names beside the leads, where they say more than 1 and 2. */
function poleNames(component: Component, slots: Shape["slots"], y: number, height: number): Primitive[] {
  if (component.kind === "fuse" || component.kind === "battery") return [];
  return slots.map((slot) =>
    text(slot.x + 5, slot.side === "top" ? y + 10 : y + height - 3, slot.name, "cavity"),
  );
}

/** A switch with one pole in and several out: the arm rests beside the first contact. */
function switchShape(component: Component, top: readonly Slot[], bottom: readonly Slot[]): Shape {
  const name = nameBlock(component);
  const below = layOutSide(bottom, "bottom", false);
  const above = layOutSide(top, "top", false);
  const left = name.width + 22;
  const bottomSide = shiftSide(below, left);
  const pole = Math.max(middleOf(bottomSide), left + middleOf(above));
  const topSide = shiftSide(above, pole - middleOf(above));
  const coreHeight = Math.max(72, name.lines.length * lineStep + 6);
  const strips = { top: stripHeight(top), bottom: stripHeight(bottom) };
  const y = strips.top;
  const pivot = y + 22;
  const contact = y + coreHeight - 20;
  const centre = topSide.slots[0]?.x ?? 0;
  const first = bottomSide.slots[0]?.x ?? centre;
  const primitives: Primitive[] = [
    line("ink", [centre, y], [centre, pivot]),
    text(centre + 6, y + 12, top[0]?.name ?? "", "cavity"),
    ...bottomSide.slots.flatMap((slot) => [
      line("ink", [slot.x, contact], [slot.x, y + coreHeight]),
      circle(slot.x, contact, 2.5),
      text(slot.x + 6, y + coreHeight - 5, slot.name, "cavity"),
    ]),
    line("ink", [centre, pivot], [first - 12, contact - 4]),
    circle(centre, pivot, 2.5),
    ...name.draw(left - 8, y + coreHeight / 2),
  ];
  const width = Math.ceil(left + Math.max(below.width, above.width, pole - left + 30) + 6);
  return {
    width,
    height: strips.top + coreHeight + strips.bottom,
    slots: [...topSide.slots, ...bottomSide.slots],
    groups: [...topSide.groups, ...bottomSide.groups],
    strips,
    core: { x: left - 8, y, width: width - left + 8, height: coreHeight },
    primitives,
  };
}

function boxShape(
  component: Component,
  top: readonly Slot[],
  bottom: readonly Slot[],
  isPartial: boolean,
): Shape {
  const glyphs = glyphsOf(component);
  const remarks = [
    ...(component.kind === "composed"
      ? wrapText(component.parts.map((part) => part.name).join(", "), 34)
      : []),
    ...(isPartial ? ["more on other sheets"] : []),
  ];
  const above = layOutSide(top, "top", true);
  const below = layOutSide(bottom, "bottom", true);
  const titles = wrapText(component.title, 28);
  const titleWidth = Math.max(
    textWidth(component.id, "designator"),
    ...titles.map((each) => textWidth(each, "title")),
    ...remarks.map((each) => textWidth(each, "function")),
    glyphs.width,
  );
  const width = Math.ceil(Math.max(above.width + 10, below.width + 10, titleWidth + 40, 120));
  const topSide = shiftSide(above, (width - above.width) / 2);
  const bottomSide = shiftSide(below, (width - below.width) / 2);
  const strips = { top: stripHeight(top), bottom: stripHeight(bottom) };
  const textHeight = (slots: readonly Slot[]) =>
    slots.length === 0 ? 8 : 18 + Math.max(...slots.map((slot) => functionLines(slot).length)) * 12;
  const titleHeight = (titles.length + 1 + remarks.length) * lineStep + glyphs.height + 16;
  const afterTitle = (titles.length + 1) * lineStep;
  const coreHeight = textHeight(top) + titleHeight + textHeight(bottom);
  const y = strips.top;
  const titleY = y + textHeight(top) + 8;
  const primitives: Primitive[] = [
    rectangle(0, y, width, coreHeight),
    ...topSide.slots.flatMap((slot) => [
      text(slot.x, y + 14, slot.name, "terminal", "middle"),
      ...functionLines(slot).map((each, index) =>
        text(slot.x, y + 27 + index * 12, each, "function", "middle"),
      ),
    ]),
    text(Math.round(width / 2), titleY + 11, component.id, "designator", "middle"),
    ...titles.map((each, index) =>
      text(Math.round(width / 2), titleY + 11 + (index + 1) * lineStep, each, "title", "middle"),
    ),
    ...remarks.map((each, index) =>
      text(Math.round(width / 2), titleY + 11 + afterTitle + index * lineStep, each, "function", "middle"),
    ),
    ...glyphs.draw(Math.round(width / 2), titleY + afterTitle + remarks.length * lineStep + 4),
    ...bottomSide.slots.flatMap((slot) => {
      const lines = functionLines(slot);
      return [
        text(slot.x, y + coreHeight - 7, slot.name, "terminal", "middle"),
        ...lines.map((each, index) =>
          text(slot.x, y + coreHeight - 8 - 12 * (lines.length - index), each, "function", "middle"),
        ),
      ];
    }),
  ];
  return {
    width,
    height: strips.top + coreHeight + strips.bottom,
    slots: [...topSide.slots, ...bottomSide.slots],
    groups: [...topSide.groups, ...bottomSide.groups],
    strips,
    core: { x: 0, y, width, height: coreHeight },
    primitives,
  };
}
