import type { Primitive, Side } from "../geometry";
import { textWidth, wrapText } from "../text-size";
import type { Slot } from "./draft";

/** Heights of the strip between a node's edge and its symbol, px. */
export const connectorStrip = 64;
export const postStrip = 22;
/** Distance of the harness face, the boundary and the facing terminal from the node's edge, px. */
export const harnessDepth = 14;
export const boundaryDepth = 32;
export const facingDepth = 50;
export const postDepth = 12;
/** Room for a connector's designator at the left of its cavities, px. */
const connectorName = 34;
/** Slots stand on a common pitch, widened in steps, so that facing connectors line up and conductors run straight. */
const slotPitch = 48;
const slotStep = 16;

export interface PlacedSlot extends Slot {
  readonly x: number;
}

export interface PlacedGroup {
  readonly connector: string;
  readonly side: Side;
  readonly slots: readonly PlacedSlot[];
  readonly fromX: number;
  readonly toX: number;
}

/** A node with every measure settled, relative to its own upper left corner. */
export interface Shape {
  readonly width: number;
  readonly height: number;
  readonly slots: readonly PlacedSlot[];
  readonly groups: readonly PlacedGroup[];
  readonly strips: Readonly<Record<Side, number>>;
  /** The symbol's own box. */
  readonly core: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  readonly primitives: readonly Primitive[];
  readonly fitted?: readonly Primitive[];
  readonly pulled?: readonly Primitive[];
}

/** The words written under a terminal name: as narrow as they go in at most five lines. */
export function functionLines(slot: Slot): readonly string[] {
  if (slot.function === undefined) return [];
  for (let characters = 7; characters < 30; characters += 1) {
    const lines = wrapText(slot.function, characters);
    if (lines.length <= 5) return lines;
  }
  return [slot.function];
}

function slotWidth(slot: Slot, withFunction: boolean): number {
  if (!withFunction) return slotPitch;
  const texts = [
    textWidth(slot.name, "terminal"),
    ...functionLines(slot).map((line) => textWidth(line, "function")),
  ];
  return Math.max(slotPitch, ...texts.map((width) => Math.ceil((width + 6) / slotStep) * slotStep));
}

export interface SideLayout {
  readonly slots: readonly PlacedSlot[];
  readonly groups: readonly PlacedGroup[];
  readonly width: number;
}

/** Sets the slots of one side next to each other from x = 0, the cavities of a connector together. */
export function layOutSide(slots: readonly Slot[], side: Side, withFunction: boolean): SideLayout {
  const placed: PlacedSlot[] = [];
  const groups: PlacedGroup[] = [];
  let x = 0;
  let index = 0;
  while (index < slots.length) {
    const connector = slots[index]?.connector;
    const from = placed.length;
    if (connector !== undefined) x += connectorName;
    while (index < slots.length && slots[index]?.connector === connector) {
      const slot = slots[index] as Slot;
      const width = slotWidth(slot, withFunction);
      placed.push({ ...slot, x: Math.round(x + width / 2) });
      x += width;
      index += 1;
    }
    const members = placed.slice(from);
    const first = members[0];
    const last = members.at(-1);
    if (connector !== undefined && first !== undefined && last !== undefined) {
      groups.push({ connector, side, slots: members, fromX: first.x - 18, toX: last.x + 18 });
    }
  }
  return { slots: placed, groups, width: x };
}

/** Moves a side to the right. */
export function shiftSide(layout: SideLayout, by: number): SideLayout {
  const shift = Math.round(by);
  const move = (slot: PlacedSlot): PlacedSlot => ({ ...slot, x: slot.x + shift });
  return {
    slots: layout.slots.map(move),
    groups: layout.groups.map((group) => ({
      ...group,
      slots: group.slots.map(move),
      fromX: group.fromX + shift,
      toX: group.toX + shift,
    })),
    width: layout.width,
  };
}

/** Height of the strip a side needs. */
export function stripHeight(slots: readonly Slot[]): number {
  if (slots.length === 0) return 0;
  return slots.some((slot) => slot.connector !== undefined) ? connectorStrip : postStrip;
}
