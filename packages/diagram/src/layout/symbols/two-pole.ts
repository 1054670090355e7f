import type { Component } from "@probeworthy/vehicle";
import type { Primitive } from "../../geometry";
import { circle, line, moved, path, text } from "./pieces";

/** The line a two-pole symbol lies on: from one lead end to the other, down the page or across it. */
export interface Axis {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly isVertical: boolean;
}

export interface TwoPoleDrawing {
  readonly always: readonly Primitive[];
  readonly fitted?: readonly Primitive[];
  readonly pulled?: readonly Primitive[];
}

type At = (along: number, across: number) => readonly [number, number];

/** Drawn about the middle of the axis; `half` is where the leads end. Manner of IEC 60617. */
const symbols: Partial<
  Record<Component["kind"], { readonly half: number; readonly draw: (at: At) => readonly Primitive[] }>
> = {
  battery: {
    half: 10,
    draw: (at) => [
      line("ink", at(-10, -15), at(-10, 15)),
      line("rail", at(-4, -8), at(-4, 8)),
      line("ink", at(4, -15), at(4, 15)),
      line("rail", at(10, -8), at(10, 8)),
      line("fine", at(-21, 10), at(-15, 10)),
      line("fine", at(-18, 7), at(-18, 13)),
      line("fine", at(18, 7), at(18, 13)),
    ],
  },
  resistor: { half: 15, draw: (at) => [block(at, 15, 7)] },
  ledLamp: {
    half: 14,
    draw: (at) => [
      circle(...at(0, 0), 14),
      path(`M ${at(-6, -7).join(" ")} L ${at(-6, 7).join(" ")} L ${at(6, 0).join(" ")} Z`, "none"),
      line("ink", at(6, -7), at(6, 7)),
      ...[-5, 3].flatMap((along) => [
        line("fine", at(along, 14), at(along - 6, 21)),
        line("fine", at(along - 6, 17), at(along - 6, 21), at(along - 2, 21)),
      ]),
    ],
  },
  activeSpeedSensor: {
    half: 16,
    draw: (at) => [block(at, 16, 16), line("ink", ...square(at(0, 0)[0], at(0, 0)[1]))],
  },
  passiveSpeedSensor: {
    half: 18,
    draw: (at) => [block(at, 18, 13), path(coil(at), "none")],
  },
  thermistor: {
    half: 15,
    draw: (at) => [block(at, 15, 7), line("ink", at(14, 15), at(8, 15), at(-14, -15)), temperatureMark(at)],
  },
  lamp: {
    half: 14,
    draw: (at) => [
      circle(...at(0, 0), 14),
      line("ink", at(-10, -10), at(10, 10)),
      line("ink", at(-10, 10), at(10, -10)),
    ],
  },
  diode: {
    half: 9,
    draw: (at) => [
      path(`M ${at(-9, -10).join(" ")} L ${at(-9, 10).join(" ")} L ${at(9, 0).join(" ")} Z`, "paper"),
      line("ink", at(9, -10), at(9, 10)),
    ],
  },
  motor: {
    half: 18,
    draw: (at) => [circle(...at(0, 0), 18), text(at(0, 0)[0], at(0, 0)[1] + 5, "M", "designator", "middle")],
  },
  chargingSource: {
    half: 18,
    draw: (at) => [
      circle(...at(0, 0), 18),
      text(at(0, 0)[0], at(0, 0)[1] + 2, "G", "designator", "middle"),
      path(waveAt(at(0, 0)[0], at(0, 0)[1] + 8), "none", "fine"),
    ],
  },
  switch: {
    half: 14,
    draw: (at) => [
      circle(...at(-14, 0), 2.5),
      circle(...at(14, 0), 2.5),
      line("ink", at(12, -1), at(-13, -12)),
      line("dashed", at(-1, -7), at(-1, -20)),
      line("ink", at(-6, -20), at(4, -20)),
    ],
  },
};

/** The current of an active sensor: two steps. */
const square = (x: number, y: number): readonly (readonly [number, number])[] => [
  [x - 10, y + 5],
  [x - 5, y + 5],
  [x - 5, y - 5],
  [x, y - 5],
  [x, y + 5],
  [x + 5, y + 5],
  [x + 5, y - 5],
  [x + 10, y - 5],
];

/** Three half turns along the axis. */
const coil = (at: At): string =>
  `M ${at(-18, 0).join(" ")} ${[-18, -6, 6]
    .map((from) => `C ${at(from, 11).join(" ")} ${at(from + 12, 11).join(" ")} ${at(from + 12, 0).join(" ")}`)
    .join(" ")}`;

type ResistorForm = "resistor" | "heater" | "horn" | "solenoid" | "terminator";

/** What a resistor is besides: a heater has bars, a solenoid a slash, a horn its bell. */
const resistorForms: Readonly<Record<ResistorForm, (at: At) => readonly Primitive[]>> = {
  resistor: (at) => [block(at, 15, 7)],
  terminator: (at) => [block(at, 15, 7)],
  heater: (at) => [
    block(at, 17, 8),
    ...[-8.5, 0, 8.5].map((along) => line("fine", at(along, -8), at(along, 8))),
  ],
  solenoid: (at) => [block(at, 10, 15), line("ink", at(10, -15), at(-10, 15))],
  horn: (at) => [
    block(at, 10, 7),
    path(
      `M ${at(-10, 7).join(" ")} L ${at(-16, 17).join(" ")} L ${at(16, 17).join(" ")} L ${at(10, 7).join(" ")} Z`,
      "paper",
    ),
  ],
};

/** Falls with temperature: beside an upright symbol, below a lying one, clear of the terminal names. */
function temperatureMark(at: At): Primitive {
  const [x, y] = at(0, 0);
  const isUpright = at(1, 0)[0] === x;
  return isUpright ? text(x + 19, y + 18, "−ϑ", "cavity") : text(x, y + 21, "−ϑ", "cavity", "middle");
}

function waveAt(x: number, y: number): string {
  return `M ${x - 7} ${y} C ${x - 4} ${y - 6} ${x - 3} ${y - 6} ${x} ${y} C ${x + 3} ${y + 6} ${x + 4} ${y + 6} ${x + 7} ${y}`;
}

function block(at: At, half: number, breadth: number): Primitive {
  const corners = [at(-half, -breadth), at(half, -breadth), at(half, breadth), at(-half, breadth)];
  return path(`M ${corners.map((corner) => corner.join(" ")).join(" L ")} Z`, "paper");
}

/** A gear wheel coupled to a motor's shaft by the double line of a mechanical link. */
const gearOf = (at: At): readonly Primitive[] => {
  const [x, y] = at(0, 0);
  return [line("fine", [x + 18, y], [x + 22, y]), circle(x + 28, y, 6), circle(x + 28, y, 1.5, "ink")];
};

/** Distance the fuse is drawn beside its holder while it is out, px. */
export const pulledFuseShift = 34;

function fuse(at: At, axis: Axis): TwoPoleDrawing {
  const end = axis.length / 2;
  const body = [block(at, 15, 7), line("ink", at(-22, 0), at(22, 0))];
  const [dx, dy] = axis.isVertical ? [pulledFuseShift, 0] : [0, pulledFuseShift];
  return {
    always: [
      line("ink", at(-end, 0), at(-22, 0)),
      line("ink", at(22, 0), at(end, 0)),
      line("ink", at(-22, -6), at(-22, 6)),
      line("ink", at(22, -6), at(22, 6)),
    ],
    fitted: body,
    pulled: body.map((piece) => moved(piece, dx, dy)),
  };
}

/** Draws a component with two terminals along an axis. Throws for a kind that has no two-pole symbol. */
export function drawTwoPole(component: Component, axis: Axis): TwoPoleDrawing {
  const { kind } = component;
  const middle = axis.length / 2;
  const at: At = (along, across) =>
    axis.isVertical ? [axis.x + across, axis.y + middle + along] : [axis.x + middle + along, axis.y - across];
  if (kind === "fuse") return fuse(at, axis);
  const symbol = symbols[kind];
  if (symbol === undefined) throw new Error(`no two-pole symbol for ${kind}`);
  return {
    always: [
      line("ink", at(-middle, 0), at(-symbol.half, 0)),
      line("ink", at(symbol.half, 0), at(middle, 0)),
      ...(component.kind === "resistor" ? resistorForms[component.form ?? "resistor"](at) : symbol.draw(at)),
      ...(component.kind === "motor" && component.gear !== undefined ? gearOf(at) : []),
    ],
  };
}
