import type { SheetConnector, SheetTestPoint, Side } from "../geometry";
import { bareMetalDepth, ringDepth } from "./bar-shape";
import type { PlacedNode } from "./run-elk";
import { postDepth } from "./shape";
import { pulledFuseShift } from "./symbols/two-pole";

const opposite = (side: Side): Side => (side === "top" ? "bottom" : "top");

/** Both faces of every cavity. */
export function pointsOfConnector(connector: SheetConnector): readonly SheetTestPoint[] {
  return connector.cavities.flatMap((cavity): readonly SheetTestPoint[] => [
    {
      pointId: cavity.harnessPoint,
      kind: "harness",
      owner: connector.id,
      ...cavity.harness,
      side: connector.side,
    },
    {
      pointId: cavity.facingPoint,
      kind: connector.inline ? "harness" : "component",
      owner: connector.id,
      ...cavity.facing,
      side: opposite(connector.side),
      ...(connector.inline ? {} : { onlyWhenApart: connector.id }),
    },
  ]);
}

/** Posts, sockets, blades, rings: where a probe goes on a node itself. */
export function pointsOfNode(placed: PlacedNode): readonly SheetTestPoint[] {
  const { node, shape, x, y } = placed;
  if (node.kind === "ground") {
    const middle = x + shape.core.x + Math.round(shape.core.width / 2);
    return [
      {
        pointId: `${node.owner}:ring`,
        kind: "ring",
        owner: node.owner,
        x: middle,
        y: y + ringDepth,
        side: "top",
      },
      {
        pointId: `${node.owner}:body`,
        kind: "bareMetal",
        owner: node.owner,
        x: middle,
        y: y + bareMetalDepth,
        side: "bottom",
      },
    ];
  }
  if (node.kind !== "component") return [];
  const isFuse = node.component.kind === "fuse";
  return shape.slots
    .filter((slot) => slot.connector === undefined)
    .flatMap((slot): readonly SheetTestPoint[] => {
      const isRailed = node.component.kind === "battery" && slot.name === "+";
      const edge = slot.side === "top" ? y + postDepth : y + shape.height - postDepth;
      const post: SheetTestPoint = {
        pointId: `${node.id}:${slot.name}`,
        kind: isFuse ? "fuseSocket" : "post",
        owner: node.id,
        x: x + slot.x,
        y: isRailed ? y + postDepth : edge,
        side: slot.side,
      };
      if (!isFuse) return [post];
      const middle = y + shape.core.y + shape.core.height / 2;
      return [
        post,
        {
          pointId: `${node.id}:${slot.name}:p`,
          kind: "fuseBlade",
          owner: node.id,
          x: x + slot.x + pulledFuseShift,
          y: Math.round(middle + (slot.side === "top" ? -26 : 26)),
          side: slot.side,
          onlyWhenApart: node.id,
        },
      ];
    });
}
