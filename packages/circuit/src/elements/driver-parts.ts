import type { DeviceLaw } from "../devices/law";
import type { Driver } from "../kinds/driver";
import {
  type ChannelParameters,
  channelLaw,
  type TrippingChannelParameters,
  trippingChannelLaw,
} from "../laws/channel";
import type { Diode, NodeName } from "../network";
import type { DevicePart, Part } from "./definition";
import { type DriverSide, driverSaturations, sidesOf } from "./driver-rules";
import { ratedCelsius } from "./rated-junction";

/** Switches with their body diodes, blocking diodes where wanted, and the pulls of an idle output. */
export function driverParts(element: Driver, state: number, timed: boolean): readonly Part[] {
  const { id, output, supply = "", ground = "", pullUpAmps, pullDownAmps } = element;
  const isTripped = state === 1;
  const sides = sidesOf(element);
  const isIdle = isTripped || !sides.some((side) => side.isCommanded);
  const parts: Part[] = sides.flatMap((side) => sideParts(element, side, isTripped, timed));
  const pull = (name: string, from: NodeName, to: NodeName, amps: number) => {
    const parameters = { isOn: false, ohms: 1, limitAmps: 1, leakAmps: isIdle ? amps : 0 };
    parts.push(device(`${id}#${name}`, [from, to], channelLaw, parameters));
  };
  if (pullUpAmps !== undefined) pull("pullUp", supply, output, pullUpAmps);
  if (pullDownAmps !== undefined) pull("pullDown", output, ground, pullDownAmps);
  return parts;
}

function sideParts(element: Driver, side: DriverSide, isTripped: boolean, timed: boolean): Part[] {
  const { from, to, channel, body, blocking, isHigh } = side;
  const { celsius = ratedCelsius, clampVolts, tripSeconds, retrySeconds } = element;
  const saturations = driverSaturations(element);
  const plain: ChannelParameters = {
    isOn: side.isCommanded && !isTripped,
    ohms: side.ohms,
    limitAmps: side.limitAmps,
    leakAmps: element.leakAmps ?? 1e-6,
  };
  const tripping = (seconds: number): TrippingChannelParameters => ({
    ...plain,
    tripSeconds: seconds,
    retrySeconds,
    isTripped,
  });
  const parts: Part[] = [
    timed && tripSeconds !== undefined
      ? device(channel, [from, to], trippingChannelLaw, tripping(tripSeconds))
      : device(channel, [from, to], channelLaw, plain),
    {
      ...junction(body, to, from, saturations.body, celsius),
      ...(clampVolts === undefined ? {} : { breakdownVolts: clampVolts }),
    },
  ];
  if (blocking !== undefined) {
    const [anode, cathode] = isHigh ? [to, element.output] : [element.output, from];
    parts.push(junction(blocking, anode, cathode, saturations.blocking, celsius));
  }
  return parts;
}

function junction(
  id: string,
  anode: NodeName,
  cathode: NodeName,
  saturationAmps: number | undefined,
  celsius: number,
): Diode {
  if (saturationAmps === undefined) throw new Error(`"${id}" was not checked before it was built.`);
  return { kind: "diode", id, anode, cathode, saturationAmps, celsius };
}

/** A law forgets here what its parameters are; the pair goes together. */
const device = <Parameters>(
  id: string,
  nodes: readonly NodeName[],
  law: DeviceLaw<Parameters>,
  parameters: Parameters,
): DevicePart => ({ kind: "device", id, nodes, law: law as DeviceLaw<unknown>, parameters });
