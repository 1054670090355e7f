import { filamentHeat, filamentWithHeat } from "../laws/filament-heat";
import type { Filament } from "../network";
import type { ElementDefinition, Part } from "./definition";
import { fraction, positive } from "./rules";

/**
 * Incandescent filament. In an operating point in thermal balance (devices/filament); in a transient with the heat it
 * holds (laws/filament-heat), so that it starts with the inrush of a cold filament. `warmUpSeconds` is the time in which
 * the rated watts bring in the heat held at the rated point; default 0.06 s · (rated amps)^(2/3).
 */
export type HeatedFilament = Filament & { readonly warmUpSeconds?: number };

export const filament: ElementDefinition<HeatedFilament> = {
  fields: {
    ratedVolts: positive,
    ratedWatts: positive,
    exponent: fraction,
    coldRatio: fraction,
    warmUpSeconds: positive,
  },
  required: ["ratedVolts", "ratedWatts"],
  terminals: ({ a, b }) => [a, b],
  parts: (element, _state, timed): readonly Part[] => {
    const id = `${element.id}#filament`;
    if (!timed) {
      const { warmUpSeconds: _, ...balance } = element;
      return [{ ...balance, id }];
    }
    const nodes = [element.a, element.b];
    return [{ kind: "device", id, nodes, law: filamentWithHeat, parameters: filamentHeat(element) }];
  },
  amps: ({ id }) => [[`${id}#filament`, 1]],
};
