import type { CircuitElement, Resistor } from "@probeworthy/circuit";
import type { Place, WriteCard } from "./ngspice-cards";

export const resistorCard: WriteCard<"resistor"> = (element, { i, node }) => ({
  lines: [`r${i} ${node(element.a)} ${node(element.b)} ${warmOhms(element)}`],
  amps: `i(@r${i}[i])`,
});

const warmOhms = ({ ohms, celsius, temperatureCoefficient, referenceCelsius = 20 }: Resistor): number =>
  celsius === undefined || temperatureCoefficient === undefined
    ? ohms
    : ohms * (1 + temperatureCoefficient * (celsius - referenceCelsius));

export const capacitorCard: WriteCard<"capacitor"> = ({ a, b, farads }, { i, node }) => ({
  lines: [`c${i} ${node(a)} ${node(b)} ${farads}`],
});

export const inductorCard: WriteCard<"inductor"> = ({ a, b, henries }, { i, node }) => ({
  lines: [`l${i} ${node(a)} ${node(b)} ${henries}`],
  amps: `i(l${i})`,
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
    const { a, b } = sensed.element;
    return { letter: byVolts, control: `${node(a)} ${node(b)} ${gain / warmOhms(sensed.element)}` };
  }
  return { letter: drivesAmps ? ("f" as const) : ("h" as const), control: `v${sensed.i} ${gain}` };
}
