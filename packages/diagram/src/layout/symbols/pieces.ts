import type { FillRole, Position, Primitive, StrokeRole, TextAnchor, TextRole } from "../../geometry";

export const line = (stroke: StrokeRole, ...points: readonly (readonly [number, number])[]): Primitive => ({
  kind: "line",
  stroke,
  points: points.map(([x, y]): Position => ({ x, y })),
});

export const rectangle = (
  x: number,
  y: number,
  width: number,
  height: number,
  fill: FillRole = "paper",
  stroke: StrokeRole = "ink",
): Primitive => ({ kind: "rect", x, y, width, height, fill, stroke });

export const circle = (x: number, y: number, radius: number, fill: FillRole = "paper"): Primitive => ({
  kind: "circle",
  x,
  y,
  radius,
  fill,
  stroke: "ink",
});

export const path = (d: string, fill: FillRole = "none", stroke: StrokeRole = "ink"): Primitive => ({
  kind: "path",
  d,
  fill,
  stroke,
});

export const text = (
  x: number,
  y: number,
  words: string,
  role: TextRole,
  anchor: TextAnchor = "start",
): Primitive => ({ kind: "text", x, y, text: words, role, anchor });

/** A primitive moved by (dx, dy). Paths are written from their own origin, so they must not be moved: use lines. */
export function moved(primitive: Primitive, dx: number, dy: number): Primitive {
  switch (primitive.kind) {
    case "line":
      return { ...primitive, points: primitive.points.map(({ x, y }) => ({ x: x + dx, y: y + dy })) };
    case "path":
      return { ...primitive, d: movedPath(primitive.d, dx, dy) };
    default:
      return { ...primitive, x: primitive.x + dx, y: primitive.y + dy };
  }
}

/** Moves an absolute path made of M, L, C, Q and Z with "x y" pairs. */
function movedPath(d: string, dx: number, dy: number): string {
  let isX = false;
  return d.replace(/-?\d+(\.\d+)?/g, (number) => {
    isX = !isX;
    return String(Number(number) + (isX ? dx : dy));
  });
}
