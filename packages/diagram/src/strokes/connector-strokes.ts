import type { SheetConnector } from "../geometry";
import { type Stroke, textStroke } from "./stroke";
import { penOf, type ThemeColours } from "./theme";

/** A mated connector: the dashed boundary, pins into sockets, cavity numbers, its designator at the left. */
export function connectorStrokes(connector: SheetConnector, colours: ThemeColours): readonly Stroke[] {
  const { from, to, label, cavities } = connector;
  const line = (
    stroke: "ink" | "rail" | "dashed",
    x1: number,
    y1: number,
    x2: number,
    y2: number,
  ): Stroke => ({
    kind: "line",
    pen: penOf(stroke, colours),
    points: [
      { x: x1, y: y1 },
      { x: x2, y: y2 },
    ],
  });
  const parts = cavities.flatMap(({ cavity, x, harness, facing }): Stroke[] => {
    const out = Math.sign(harness.y - facing.y);
    const tail = connector.inline ? facing.y : facing.y - out * 14;
    return [
      line("ink", x, harness.y, x, from.y + out * 5),
      {
        kind: "path",
        d: `M ${x - 5} ${from.y} A 5 5 0 0 ${out > 0 ? 0 : 1} ${x + 5} ${from.y}`,
        pen: penOf("ink", colours),
      },
      line("ink", x, tail, x, from.y + out),
      line("rail", x, from.y - out * 8, x, from.y + out),
      textStroke({ x: x + 8, y: from.y - out * 9 + 4 }, cavity, {
        size: 11,
        isMono: true,
        anchor: "start",
        colour: colours.ink,
      }),
    ];
  });
  const name = textStroke(label, connector.id, {
    size: 12,
    isMono: true,
    anchor: label.anchor,
    colour: colours.ink,
    isBold: true,
  });
  return [line("dashed", from.x, from.y, to.x, to.y), ...parts, name];
}
