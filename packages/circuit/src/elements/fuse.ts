import type { Fuse } from "../kinds/fuse";
import { fuseLink, linkHalfVolts, mostHotRatio } from "../laws/fuse-link";
import { type FuseMeltingParameters, fuseMelting } from "../laws/fuse-melting";
import type { FuseType } from "../physics/fuse-curve";
import { fuseDerating } from "../physics/fuse-derating";
import { fuseColdOhms, fuseHotRatio } from "../physics/fuse-resistance";
import type { ElementDefinition } from "./definition";
import { celsius, flag, positive, share } from "./rules";

const types: Readonly<Record<FuseType, true>> = { C: true, E: true, F: true, bolted: true };
const mostDropRatio = 2.5;
const blown = 1;

export const fuseDefinition: ElementDefinition<Fuse> = {
  fields: {
    ratedAmps: positive,
    coldOhms: positive,
    ratedDropVolts: positive,
    ambientCelsius: celsius,
    isBlown: flag,
    melted: share,
    openOhms: positive,
  },
  required: ["ratedAmps"],
  terminals: ({ a, b }) => [a, b],
  refuse: (element) => {
    const type: unknown = element.type;
    if (typeof type !== "string" || !Object.hasOwn(types, type))
      return { message: "type must be C, E, F or bolted.", field: "type" };
    const ratio = hotRatio(element);
    return ratio >= 1 && ratio <= mostDropRatio
      ? undefined
      : {
          message: `ratedDropVolts must be 1 to ${mostDropRatio} times coldOhms · ratedAmps.`,
          field: "ratedDropVolts",
        };
  },
  parts: (element, state, timed) => [
    {
      kind: "device",
      id: `${element.id}#link`,
      nodes: [element.a, element.b],
      law: timed ? fuseMelting : fuseLink,
      parameters: fuseParameters(element, timed ? state === blown : element.isBlown === true),
    },
  ],
  amps: ({ id }) => [[`${id}#link`, 1]],
  initialState: ({ isBlown }) => (isBlown ? blown : 0),
  guards: ({ id, isBlown }, state, look, timed) => {
    if (timed)
      return [{ value: state === blown ? -1 : look.internal(`${id}#link`, "melted") - 1, next: blown }];
    // Without time a fuse is what it is said to be, so that `set` blows and replaces it.
    const said = isBlown ? blown : 0;
    return [{ value: state === said ? -1 : 1, next: said }];
  },
  quantities: (_element, state) => ({ isBlown: state }),
};

const coldOhmsOf = ({ type, ratedAmps, coldOhms }: Fuse): number => coldOhms ?? fuseColdOhms(type, ratedAmps);

/** Hot over cold ohms at the rated current. */
const hotRatio = (element: Fuse): number =>
  element.ratedDropVolts === undefined
    ? fuseHotRatio(element.type, element.ratedAmps)
    : element.ratedDropVolts / (coldOhmsOf(element) * element.ratedAmps);

/** Numbers of the laws for a fuse. */
export function fuseParameters(element: Fuse, isBlown: boolean): FuseMeltingParameters {
  const coldOhms = coldOhmsOf(element);
  const ratio = Math.min(mostHotRatio, Math.max(1, hotRatio(element)));
  return {
    coldOhms,
    halfVolts: linkHalfVolts(coldOhms, element.ratedAmps, ratio),
    isBlown,
    openOhms: element.openOhms ?? 1e12,
    type: element.type,
    deratedAmps: element.ratedAmps * fuseDerating(element.type, element.ambientCelsius ?? 20),
    melted: element.melted ?? 0,
  };
}
