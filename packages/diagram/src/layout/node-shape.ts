import type { VehicleDocument } from "@probeworthy/vehicle";
import { shapeBar, shapeGround } from "./bar-shape";
import { shapeComponent } from "./component-shape";
import type { DraftNode, Slot } from "./draft";
import { shapeRail } from "./rails";
import { shapeReference } from "./reference-shape";
import { connectorStrip, layOutSide, type Shape, shiftSide } from "./shape";

export interface GroundPointText {
  readonly id: string;
  readonly title: string;
}

/** The shape of a node once the order of its slots on each side is settled. */
export function shapeNode(document: VehicleDocument, node: DraftNode, slots: readonly Slot[]): Shape {
  switch (node.kind) {
    case "component":
      return shapeComponent(node.component, slots, node.more !== undefined);
    case "reference":
      return shapeReference(node.link, node.title, slots);
    case "rail":
      return shapeRail(node, slots);
    case "inline":
      return shapeInline(slots);
    case "ground": {
      const ground = document.groundPoints.find((candidate) => candidate.id === node.owner);
      return shapeGround(ground ?? { id: node.owner, title: node.owner }, slots);
    }
    default:
      return shapeBar(node.kind === "splice" ? node.owner : "", slots);
  }
}

/** An in-line connector: the upper cavities decide the order, each lower face lies under its upper one. */
function shapeInline(slots: readonly Slot[]): Shape {
  const top = slots.filter((slot) => slot.side === "top");
  const upper = shiftSide(layOutSide(top, "top", false), 0);
  const lower = upper.slots.flatMap((slot) => {
    const other = slots.find((candidate) => candidate.side === "bottom" && candidate.cavity === slot.cavity);
    return other === undefined ? [] : [{ ...other, x: slot.x }];
  });
  return {
    width: upper.width + 4,
    height: connectorStrip,
    slots: [...upper.slots, ...lower],
    groups: upper.groups,
    strips: { top: 0, bottom: 0 },
    core: { x: 0, y: connectorStrip / 2, width: 0, height: 0 },
    primitives: [],
  };
}
