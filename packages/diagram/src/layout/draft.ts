import type { Component, VehicleDocument } from "@probeworthy/vehicle";
import type { Side } from "../geometry";
import { completeTerminals, moreOf } from "./complete-terminals";
import { componentTerminals, type End } from "./conductor-ends";
import { type DirectedConductor, faceKey, sharedFaces } from "./flow";
import type { OutsideLink, Selection } from "./select-conductors";

/** A place on a node where one line may attach. */
export interface Slot {
  /** `X2.5` for a cavity, `A1:T1` for a bare terminal, `XS1#W4` for one conductor on a bar. */
  readonly key: string;
  readonly side: Side;
  readonly name: string;
  readonly function?: string;
  readonly connector?: string;
  readonly cavity?: string;
  readonly conductor?: string;
  /** Only for in-line cavities: the face that lies on this side. */
  readonly face?: "h" | "b";
}

/**
 * A node to be laid out. `bar` joins several lines: the supply rail over a battery, a splice, a ground point or a
 * stud with more than one conductor on it.
 */
export type DraftNode =
  | {
      readonly kind: "component";
      readonly id: string;
      readonly component: Component;
      readonly slots: Slot[];
      /** Terminals with conductors that are drawn on other sheets. */
      more?: { readonly terminals: number; readonly systems: readonly string[] };
    }
  | {
      /** An arrow to another sheet. */
      readonly kind: "reference";
      readonly id: string;
      readonly owner: string;
      readonly link: OutsideLink;
      /** Title of the sheet it points to. */
      readonly title: string;
      readonly slots: Slot[];
    }
  | {
      readonly kind: "rail" | "splice" | "ground" | "stud";
      readonly id: string;
      readonly owner: string;
      readonly slots: Slot[];
      /** Only at a rail that stands for a bar: what it is called, and where its feed is drawn. */
      readonly name?: string;
      readonly link?: OutsideLink;
      readonly title?: string;
    }
  | { readonly kind: "inline"; readonly id: string; readonly connector: string; readonly slots: Slot[] };

export interface DraftLine {
  readonly id: string;
  readonly kind: "conductor" | "link";
  readonly upper: { readonly node: string; readonly slot: string };
  readonly lower: { readonly node: string; readonly slot: string };
}

export interface Draft {
  readonly nodes: readonly DraftNode[];
  readonly lines: readonly DraftLine[];
}

const boxKinds: ReadonlySet<Component["kind"]> = new Set([
  "module",
  "torqueSensor",
  "positionSensor",
  "passive",
  "composed",
]);

/** True for components drawn as a box with named terminals along its edges. */
export const isBox = (component: Component): boolean => boxKinds.has(component.kind);

const terminalKey = (end: End) =>
  end.connector === undefined ? end.joint : `${end.connector}.${end.cavity ?? ""}`;

/** Turns directed conductors into nodes with slots and the lines between them. */
export function draftSheet(
  document: VehicleDocument,
  conductors: readonly DirectedConductor[],
  selection: Selection,
  systemId: string,
): Draft {
  const titleOf = (id: string | undefined) =>
    document.systems.find((system) => system.id === id)?.title ?? "other sheets";
  const nodes = new Map<string, DraftNode>();
  const lines: DraftLine[] = [];
  const components = new Map(document.components.map((component) => [component.id, component]));
  const attached = new Map<string, { conductor: DirectedConductor; isUpper: boolean }[]>();
  for (const conductor of conductors) {
    for (const end of [conductor.upper, conductor.lower]) {
      if (end.kind !== "terminal") continue;
      const key = terminalKey(end);
      attached.set(key, [...(attached.get(key) ?? []), { conductor, isUpper: end === conductor.upper }]);
    }
  }

  const addSlot = (node: DraftNode, slot: Slot) => {
    const existing = nodes.get(node.id) ?? node;
    nodes.set(node.id, existing);
    if (!existing.slots.some((other) => other.key === slot.key)) existing.slots.push(slot);
    return { node: node.id, slot: slot.key };
  };
  const barSlot = (
    kind: "rail" | "splice" | "ground" | "stud",
    id: string,
    owner: string,
    lineId: string,
    side: Side,
  ) => addSlot({ kind, id, owner, slots: [] }, { key: `${id}#${lineId}`, side, name: "", conductor: lineId });

  const componentSlot = (end: End, side: Side, conductor?: string) => {
    const component = components.get(end.owner);
    if (component === undefined) throw new Error(`${end.owner} was resolved but is not in the document`);
    const name = end.terminal ?? "";
    const purpose = componentTerminals(component).find((terminal) => terminal.name === name)?.function;
    return addSlot(
      { kind: "component", id: component.id, component, slots: [] },
      {
        key: terminalKey(end),
        side,
        name,
        ...(purpose === undefined ? {} : { function: purpose }),
        ...(end.connector === undefined ? {} : { connector: end.connector }),
        ...(end.cavity === undefined ? {} : { cavity: end.cavity }),
        ...(conductor === undefined ? {} : { conductor }),
      },
    );
  };

  const attachTerminal = (end: End, conductor: DirectedConductor, isUpper: boolean) => {
    const key = terminalKey(end);
    const side: Side = isUpper ? "bottom" : "top";
    const component = components.get(end.owner);
    if (component?.kind === "battery" && end.terminal === "+") {
      const rail = `rail ${end.owner}`;
      const from = barSlot("rail", rail, end.owner, key, "bottom");
      const to = componentSlot(end, "top");
      if (!lines.some((line) => line.id === key))
        lines.push({ id: key, kind: "link", upper: from, lower: to });
      return barSlot("rail", rail, end.owner, conductor.id, "bottom");
    }
    const here = attached.get(key) ?? [];
    if (here.length < 2) return componentSlot(end, side, conductor.id);
    // Several conductors under one nut: a short bar of its own, joined to the terminal by a plain line.
    const leaving = here.filter((other) => other.isUpper).length;
    const terminalSide: Side = leaving > here.length / 2 ? "bottom" : "top";
    const stud = `stud ${key}`;
    const terminal = componentSlot(end, terminalSide);
    const bar = barSlot("stud", stud, end.owner, key, terminalSide === "bottom" ? "top" : "bottom");
    if (!lines.some((line) => line.id === key)) {
      const [upper, lower] = terminalSide === "bottom" ? [terminal, bar] : [bar, terminal];
      lines.push({ id: key, kind: "link", upper, lower });
    }
    return barSlot("stud", stud, end.owner, conductor.id, side);
  };

  const shared = sharedFaces(conductors.flatMap(({ upper, lower }) => [upper, lower]));
  const inlineTop = new Map<string, "h" | "b">();
  // A face with one conductor says which way the current goes; a shared one only where there is nothing better.
  for (const isSharedTurn of [false, true]) {
    for (const { upper, lower } of conductors) {
      for (const end of [lower, upper]) {
        if (end.kind !== "inline" || end.face === undefined || inlineTop.has(end.joint)) continue;
        if (shared.has(faceKey(end)) !== isSharedTurn) continue;
        const other = end.face === "h" ? "b" : "h";
        inlineTop.set(end.joint, end === lower ? end.face : other);
      }
    }
  }

  const attach = (end: End, conductor: DirectedConductor, isUpper: boolean) => {
    if (end.kind === "terminal") return attachTerminal(end, conductor, isUpper);
    const side: Side = isUpper ? "bottom" : "top";
    if (end.kind === "reference") {
      const link = selection.outside.get(end.joint);
      if (link === undefined) throw new Error(`${end.joint} has no other sheet`);
      return addSlot(
        {
          kind: "reference",
          id: end.joint,
          owner: end.joint,
          link,
          title: titleOf(link.systems[0]),
          slots: [],
        },
        { key: end.joint, side, name: "", conductor: conductor.id },
      );
    }
    if (end.kind === "bar") {
      const splice = document.splices.find((one) => one.id === end.owner);
      const link = selection.bars.get(end.joint);
      const node: DraftNode = {
        kind: "rail",
        id: `rail ${end.owner}#${conductor.id}`,
        owner: end.owner,
        name: splice?.title ?? "Bar",
        ...(link === undefined || link.systems.length === 0 ? {} : { link, title: titleOf(link.systems[0]) }),
        slots: [],
      };
      return addSlot(node, {
        key: `${end.owner}#${conductor.id}`,
        side: "bottom",
        name: "",
        conductor: conductor.id,
      });
    }
    if (end.kind !== "inline") return barSlot(end.kind, end.owner, end.owner, conductor.id, side);
    const cavity = end.cavity ?? "";
    // Every cavity by itself: those that come to lie side by side are drawn as one connector in the end.
    const id = `${end.owner} ${inlineTop.get(end.joint) ?? "h"}#${cavity}`;
    const isCrowded = shared.has(faceKey(end));
    const faceSide: Side = inlineTop.get(end.joint) === end.face ? "top" : "bottom";
    const here = isCrowded ? faceSide : side;
    for (const each of ["top", "bottom"] as const) {
      const face =
        each === "top" ? (inlineTop.get(end.joint) ?? "h") : inlineTop.get(end.joint) === "b" ? "h" : "b";
      const isHere = each === here && !isCrowded;
      const key = `${end.joint}:${face}`;
      const slot: Slot = { key, side: each, name: cavity, connector: end.owner, cavity, face };
      const node: DraftNode = { kind: "inline", id, connector: end.owner, slots: [] };
      const existing = nodes.get(id)?.slots.findIndex((other) => other.key === key) ?? -1;
      if (existing < 0) addSlot(node, isHere ? { ...slot, conductor: conductor.id } : slot);
      else if (isHere) nodes.get(id)?.slots.splice(existing, 1, { ...slot, conductor: conductor.id });
    }
    const slot = { node: id, slot: faceKey(end) };
    if (!isCrowded) return slot;
    // Two conductors in one crimp: a short bar of their own, joined to the cavity by a plain line.
    const stud = `stud ${faceKey(end)}`;
    const bar = barSlot("stud", stud, end.owner, faceKey(end), faceSide === "top" ? "bottom" : "top");
    if (!lines.some((line) => line.id === faceKey(end))) {
      const [upper, lower] = faceSide === "top" ? [bar, slot] : [slot, bar];
      lines.push({ id: faceKey(end), kind: "link", upper, lower });
    }
    return barSlot("stud", stud, end.owner, conductor.id, side);
  };

  for (const conductor of conductors) {
    lines.push({
      id: conductor.id,
      kind: "conductor",
      upper: attach(conductor.upper, conductor, true),
      lower: attach(conductor.lower, conductor, false),
    });
  }
  for (const [splice, link] of selection.splices) {
    const id = `reference ${splice}`;
    if (!nodes.has(splice)) continue;
    const upper = barSlot("splice", splice, splice, id, "bottom");
    const lower = addSlot(
      { kind: "reference", id, owner: splice, link, title: titleOf(link.systems[0]), slots: [] },
      { key: id, side: "top", name: "" },
    );
    lines.push({ id, kind: "link", upper, lower });
  }
  for (const node of nodes.values()) {
    if (node.kind !== "component") continue;
    completeTerminals(document, node.component, node.slots);
    const more = moreOf(document, node.component, node.slots, systemId);
    if (more !== undefined) node.more = more;
  }
  return { nodes: [...nodes.values()], lines };
}
