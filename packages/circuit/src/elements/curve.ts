import type { Curve } from "../kinds/curve";
import type { ElementDefinition } from "./definition";
import { flag, type Rule } from "./rules";

/** Beyond any circuit, and so small that no sum of such numbers overflows. */
const most = 1e9;

const isPoint = (point: unknown): boolean =>
  Array.isArray(point) && point.length === 2 && point.every((part) => Math.abs(part) <= most);

const points: Rule = {
  test: (value) => Array.isArray(value) && value.length >= 2 && value.every(isPoint),
  says: "two or more pairs [volts, amps] of numbers up to 1e9",
};

/** `points` must be left as they are once they have been checked. */
export const curveDefinition: ElementDefinition<Curve> = {
  fields: { points, active: flag },
  required: ["points"],
  terminals: ({ a, b }) => [a, b],
  refuse(element) {
    const message = faultOf(element);
    return message === undefined ? undefined : { message, field: "points" };
  },
  parts: (element) => [element],
  amps: ({ id }) => [[id, 1]],
};

function faultOf({ points: list, active = false }: Curve): string | undefined {
  for (let i = 1; i < list.length; i++) {
    const [volts, amps] = list[i];
    const [voltsBefore, ampsBefore] = list[i - 1];
    if (!(volts > voltsBefore)) return `points must be in order of rising volts; point ${i + 1} is not.`;
    if (amps < ampsBefore) return `points must not fall in amps; point ${i + 1} does.`;
    const steepness = (amps - ampsBefore) / (volts - voltsBefore);
    if (!(steepness <= steepest)) {
      return `points must not rise by more than ${steepest} A/V; point ${i + 1} does.`;
    }
  }
  if (active || list.some(([volts, amps]) => volts === 0 && amps === 0)) return undefined;
  return "points must include [0, 0], or the element must say active: true.";
}

/** A millionth of an ohm; a steeper step between two points is a slip of the pen, and would swamp every sum. */
const steepest = 1e6;
