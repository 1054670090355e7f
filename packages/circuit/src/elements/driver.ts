import type { Driver } from "../kinds/driver";
import { emptied } from "../laws/channel";
import type { NodeName } from "../network";
import type { ElementDefinition } from "./definition";
import { driverParts } from "./driver-parts";
import { checkDriver, sidesOf } from "./driver-rules";
import { celsius, flag, notNegative, positive, type Rule } from "./rules";

/** No resistance follows a higher power; a much higher one would leave the range of numbers. */
const ohmsExponent: Rule = {
  test: (value) => typeof value === "number" && value >= 0 && value <= 10,
  says: "a number from 0 to 10",
};

const named = (node: NodeName | undefined): NodeName[] => (node === undefined ? [] : [node]);

/** States: 0 in service, 1 tripped. Amps count into the output. */
export const driverDefinition: ElementDefinition<Driver> = {
  fields: {
    on: flag,
    enabled: flag,
    onOhms: positive,
    celsius,
    ohmsExponent,
    limitAmps: positive,
    leakAmps: notNegative,
    pullUpAmps: notNegative,
    pullDownAmps: notNegative,
    bodyVolts: positive,
    clampVolts: positive,
    blockingVolts: positive,
    blockingAmps: positive,
    tripSeconds: positive,
    retrySeconds: positive,
  },
  required: ["on", "onOhms"],
  topological: ["pullUpAmps", "pullDownAmps", "blockingVolts", "tripSeconds"],
  terminals: ({ output, supply, ground }) => [output, ...named(supply), ...named(ground)],
  refuse: checkDriver,
  parts: driverParts,
  amps(element) {
    const list: [string, 1 | -1][] = [];
    for (const side of sidesOf(element)) {
      const towards = side.isHigh ? -1 : 1;
      if (side.blocking !== undefined) list.push([side.blocking, towards]);
      else list.push([side.channel, towards], [side.body, towards === 1 ? -1 : 1]);
    }
    if (element.pullUpAmps !== undefined) list.push([`${element.id}#pullUp`, -1]);
    if (element.pullDownAmps !== undefined) list.push([`${element.id}#pullDown`, 1]);
    return list;
  },
  guards(element, state, look, timed) {
    const { tripSeconds, retrySeconds } = element;
    if (tripSeconds === undefined) return [];
    const sides = sidesOf(element);
    const isCommanded = sides.some((side) => side.isCommanded);
    if (state === 1 && !isCommanded) return [{ value: 1, next: 0 }];
    if (!timed) {
      const canTrip = state === 0 && retrySeconds === undefined && isCommanded;
      const worst = Math.max(
        ...sides.map((side) => {
          const volts = look.volts(side.from) - look.volts(side.to);
          return side.isCommanded ? volts / (side.ohms * side.limitAmps) : 0;
        }),
      );
      return [{ value: canTrip ? worst - 1 : -1, next: 1 }];
    }
    const fullest = Math.max(...sides.map((side) => look.internal(side.channel, "overload")));
    if (state === 0) return [{ value: fullest - 1, next: 1 }];
    return [{ value: retrySeconds === undefined ? -1 : emptied - fullest, next: 0 }];
  },
  quantities: (_element, state) => ({ isTripped: state }),
};
