import type { CircuitElement } from "@probeworthy/circuit";
import type { Place, WriteCard } from "./ngspice-cards";

export const resistorCard: WriteCard<"resistor"> = ({ a, b, ohms }, { i, node }) => ({
  lines: [`r${i} ${node(a)} ${node(b)} ${ohms}`],
  amps: `i(@r${i}[i])`,
});

export const voltageSourceCard: WriteCard<"voltageSource"> = (
  { positive, negative, volts, ohms },
  { i, node },
) => {
  const plus = ohms === undefined ? node(positive) : `x${i}`;
  const inner = ohms === undefined ? [] : [`rs${i} ${node(positive)} ${plus} ${ohms}`];
  return { lines: [...inner, `v${i} ${plus} ${node(negative)} dc ${volts}`], amps: `i(v${i})` };
};

export const currentSourceCard: WriteCard<"currentSource"> = ({ from, to, amps }, { i, node }) => ({
  lines: [`i${i} ${node(from)} ${node(to)} dc ${amps}`],
});

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

export const controlledSourceCard: WriteCard<"controlledSource"> = (element, place) => {
  const { i, node } = place;
  const { letter, control } = controlOf(element, place);
  const name = `${letter}${i}`;
  const ends = [node(element.positive), node(element.negative)];
  if (letter === "g" || letter === "f")
    return { lines: [`${name} ${ends.join(" ")} ${control}`], amps: `i(@${name}[i])` };
  if (!place.isSensed) return { lines: [`${name} ${ends.join(" ")} ${control}`], amps: `i(${name})` };
  return { lines: [`v${i} ${ends[0]} x${i} 0`, `${name} x${i} ${ends[1]} ${control}`], amps: `i(v${i})` };
};

/**
 * ngspice senses a current through a voltage source only. A zero-volt one in series with a resistor ruins its
 * elimination where that resistor leads nowhere, so a resistor is sensed by its voltage.
 */
function controlOf(element: CircuitElement & { kind: "controlledSource" }, place: Place) {
  const { node } = place;
  const { type, controlElement, controlPositive, controlNegative, gain } = element;
  const drivesAmps = type === "vccs" || type === "cccs";
  const byVolts = drivesAmps ? ("g" as const) : ("e" as const);
  if (controlElement === undefined)
    return { letter: byVolts, control: `${node(controlPositive)} ${node(controlNegative)} ${gain}` };
  const sensed = place.find(controlElement);
  if (sensed.element.kind === "resistor") {
    const { a, b, ohms } = sensed.element;
    return { letter: byVolts, control: `${node(a)} ${node(b)} ${gain / ohms}` };
  }
  return { letter: drivesAmps ? ("f" as const) : ("h" as const), control: `v${sensed.i} ${gain}` };
}
