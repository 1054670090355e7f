import type { Component } from "@probeworthy/vehicle";
import type { Primitive } from "../../geometry";
import { circle, line, path, rectangle, text } from "./pieces";

/** A small picture inside a box: what kind of thing it is. `draw` takes its middle and its upper edge. */
export interface Glyphs {
  readonly width: number;
  readonly height: number;
  readonly draw: (middle: number, top: number) => readonly Primitive[];
}

const none: Glyphs = { width: 0, height: 0, draw: () => [] };
const trackWidth = 52;

/** Tracks with their wipers, joined by the dashed line of one shaft. */
function tracks(count: number): Glyphs {
  const width = count * trackWidth;
  return {
    width,
    height: 36,
    draw: (middle, top) => {
      const left = middle - width / 2;
      const shaft = top + 26;
      return [
        ...Array.from({ length: count }, (_, index) => left + index * trackWidth).flatMap((x) => [
          rectangle(x + 8, top + 2, trackWidth - 16, 9),
          line("ink", [x + trackWidth / 2, shaft], [x + trackWidth / 2, top + 13]),
          path(
            `M ${x + trackWidth / 2 - 4} ${top + 19} L ${x + trackWidth / 2 + 4} ${top + 19} L ${x + trackWidth / 2} ${top + 11} Z`,
            "ink",
          ),
        ]),
        line("dashed", [left + 8, shaft], [left + width - 8, shaft]),
      ];
    },
  };
}

const generator: Glyphs = {
  width: 44,
  height: 46,
  draw: (middle, top) => [
    circle(middle, top + 22, 19),
    text(middle, top + 23, "G", "designator", "middle"),
    path(
      `M ${middle - 7} ${top + 31} C ${middle - 4} ${top + 25} ${middle - 3} ${top + 25} ${middle} ${top + 31} C ${middle + 3} ${top + 37} ${middle + 4} ${top + 37} ${middle + 7} ${top + 31}`,
      "none",
      "fine",
    ),
  ],
};

/** The picture for a component that is drawn as a box; empty where its words say enough. */
export function glyphsOf(component: Component): Glyphs {
  if (component.kind === "positionSensor") return tracks(component.tracks.length);
  if (component.kind === "torqueSensor") return tracks(2);
  if (component.kind === "chargingSource") return generator;
  return none;
}
