import type { CircuitElement } from "@probeworthy/circuit";
import type { WriteCard } from "./ngspice-cards";
import { junctionModel, ratedSaturation } from "./ngspice-diode-cards";

/** An open switch is not asked for its current: ngspice's own reading of it is wrong, and a sensing source too coarse. */
export const switchCard: WriteCard<"switch"> = (
  { a, b, closed, closedOhms = 1e-3, openOhms = 1e12 },
  { i, node, isSensed },
) => {
  const hasSensor = closed || isSensed;
  const first = hasSensor ? `x${i}` : node(a);
  return {
    lines: [
      `.model sw${i} sw(vt=0.5 vh=0 ron=${closedOhms} roff=${openOhms})`,
      `vc${i} c${i} 0 ${closed ? 1 : 0}`,
      ...(hasSensor ? [`v${i} ${node(a)} ${first} 0`] : []),
      `s${i} ${first} ${node(b)} c${i} 0 sw${i}`,
    ],
    ...(closed ? { amps: `i(v${i})` } : {}),
  };
};

/** The armature is a switch that the coil's current moves; between drop-out and pull-in it stays released. */
export const relayCard: WriteCard<"relay"> = (element, { i, node }) => {
  const { ohms = 85, pullInVolts = 6.8, dropOutVolts = 2.4, suppressor = "none" } = element;
  const { makeClosedOhms = 5e-3, makeOpenOhms = 1e12, suppressorOhms = 680 } = element;
  if (element.normallyOpen === undefined || element.normallyClosed !== undefined)
    throw new Error("A card is written for a make contact only.");
  if (suppressor === "diode" || suppressor === "reversedDiode")
    throw new Error("A card is written for a resistor across the coil only.");
  const [middle, half] = [(pullInVolts + dropOutVolts) / 2 / ohms, (pullInVolts - dropOutVolts) / 2 / ohms];
  const [plus, minus] = [node(element.coilPlus), node(element.coilMinus)];
  return {
    lines: [
      `v${i} ${plus} x${i} 0`,
      `rw${i} x${i} y${i} ${ohms}`,
      `vw${i} y${i} ${minus} 0`,
      ...(suppressor === "resistor" ? [`rx${i} x${i} ${minus} ${suppressorOhms}`] : []),
      `.model k${i}m csw(it=${middle} ih=${half} ron=${makeClosedOhms} roff=${makeOpenOhms})`,
      `w${i} ${node(element.common)} ${node(element.normallyOpen)} vw${i} k${i}m off`,
    ],
    amps: `i(v${i})`,
  };
};

export const comparatorCard: WriteCard<"comparator"> = (element, { i, node }) => {
  const { thresholdVolts, hysteresisVolts = 0.1, closesBelow = false } = element;
  const { closedOhms = 1, openOhms = 1e9, inputOhms = 1e9 } = element;
  const inputs = [node(element.positive), node(element.negative)];
  const [control, threshold] = closesBelow
    ? [inputs.toReversed(), -thresholdVolts]
    : [inputs, thresholdVolts];
  return {
    lines: [
      `ri${i} ${inputs.join(" ")} ${inputOhms}`,
      `.model u${i}m sw(vt=${threshold} vh=${hysteresisVolts / 2} ron=${closedOhms} roff=${openOhms})`,
      `s${i} ${node(element.a)} ${node(element.b)} ${control.join(" ")} u${i}m off`,
    ],
  };
};

/** One switch of an output stage with its body diode, by the law stated in packages/circuit/src/laws/channel.ts. */
export const driverCard: WriteCard<"driver"> = (element, { i, node }) => {
  const { type, output, supply, ground, enabled = true, on } = element;
  if (
    element.blockingVolts !== undefined ||
    element.tripSeconds !== undefined ||
    element.pullUpAmps !== undefined
  )
    throw new Error("A card is written for a plain output stage only.");
  const channel = (name: string, from: string, to: string, isOn: boolean): string[] => [
    `b${name}${i} ${from} ${to} i=${channelAmps(element, `v(${from},${to})`, isOn)}`,
    junctionModel(`d${name}${i}m`, bodyDiode(element)),
    `d${name}${i} ${to} ${from} d${name}${i}m`,
  ];
  const lines: string[] = [];
  if (type !== "lowSide") lines.push(...channel("h", node(supply), node(output), enabled && on));
  if (type !== "highSide")
    lines.push(...channel("l", node(output), node(ground), enabled && (type === "pushPull" ? !on : on)));
  return { lines };
};

type Driver = CircuitElement & { kind: "driver" };

function channelAmps({ onOhms, limitAmps, leakAmps = 1e-6 }: Driver, volts: string, isOn: boolean): string {
  if (!isOn) return `(${leakAmps}*tanh(${volts})+1e-12*${volts})`;
  if (limitAmps === undefined) return `${volts}/${onOhms}`;
  const u = `(${volts}/${onOhms * limitAmps})`;
  return `${u} > 0 ? ${limitAmps}*${u}/(1+${u}^8)^0.125 : ${volts}/${onOhms}`;
}

/** At 25 °C; its breakdown is the clamp. */
const bodyDiode = ({ bodyVolts = 0.8, clampVolts }: Driver) => ({
  saturationAmps: ratedSaturation(bodyVolts, 1, 1, 25),
  celsius: 25,
  ...(clampVolts === undefined ? {} : { breakdownVolts: clampVolts }),
});
