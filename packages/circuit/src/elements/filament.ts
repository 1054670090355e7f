import { filamentHeat, filamentWithHeat } from "../laws/filament-heat";
import type { Filament } from "../network";
import type { ElementDefinition } from "./definition";
import { fraction, positive } from "./rules";

/** In an operating point in thermal balance (devices/filament), in a transient with the heat it holds. */
export const filamentDefinition: ElementDefinition<Filament> = {
  fields: {
    ratedVolts: positive,
    ratedWatts: positive,
    exponent: fraction,
    coldRatio: fraction,
    warmUpSeconds: positive,
  },
  required: ["ratedVolts", "ratedWatts"],
  terminals: ({ a, b }) => [a, b],
  refuse: ({ ratedVolts, exponent = 0.55, coldRatio = 1 / 15 }) =>
    ratedVolts / Math.sqrt(coldRatio ** (2 / (exponent - 1)) - 1) > 0
      ? undefined
      : { message: "exponent must be farther from 1 for so low a coldRatio.", field: "exponent" },
  parts: (element, _state, timed) => {
    if (!timed) return [element];
    const { id, a, b } = element;
    return [{ kind: "device", id, nodes: [a, b], law: filamentWithHeat, parameters: filamentHeat(element) }];
  },
  amps: ({ id }) => [[id, 1]],
};
