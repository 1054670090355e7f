import type { CircuitElement, Diode, PrimitiveElement, Regulator } from "../network";
import { resistorOhms } from "../physics/copper-temperature";
import { curveDefinition } from "./curve";
import type { ElementDefinition, Part } from "./definition";
import { filamentDefinition } from "./filament";
import { celsius, finite, flag, notNegative, positive } from "./rules";

type Of<Kind extends CircuitElement["kind"]> = Extract<CircuitElement, { kind: Kind }>;
type Definitions = { readonly [Kind in PrimitiveElement["kind"]]: ElementDefinition<Of<Kind>> };

/** A primitive element is its own only part. */
const itself = <Element extends PrimitiveElement>() => ({
  parts: (element: Element): readonly Part[] => [element],
  amps: (element: Element) => [[element.id, 1]] as const,
});

const between = (element: { readonly a: string; readonly b: string }) => [element.a, element.b];
const poles = (element: { readonly positive: string; readonly negative: string }) => [
  element.positive,
  element.negative,
];

const innerNode = (diode: Diode): string => `${diode.id}#junction`;

/** The way back from output to input is a junction in series with a resistance. */
function regulatorParts(element: Regulator): readonly Part[] {
  const { id, input, output, reverseOhms: ohms } = element;
  if (ohms === undefined) return [element];
  const inner = `${id}#reverse`;
  return [
    element,
    { kind: "resistor", id: `${id}#reverse`, a: output, b: inner, ohms },
    { kind: "diode", id: `${id}#junction`, anode: inner, cathode: input },
  ];
}

const controlTypes: readonly unknown[] = ["vcvs", "vccs", "ccvs", "cccs"];

/** Whether the control exists is for the network to say; see numbering. */
function checkControl(element: Of<"controlledSource">): { message: string; field: string } | undefined {
  if (!controlTypes.includes(element.type)) {
    return { message: `type must be one of ${controlTypes.join(", ")}.`, field: "type" };
  }
  for (const field of ["controlPositive", "controlNegative", "controlElement"] as const) {
    const name: unknown = element[field];
    if (name === undefined || (typeof name === "string" && name !== "")) continue;
    return { message: `${field} must be a name.`, field };
  }
  return undefined;
}

/** The kinds that the solver has tables for. */
export const primitives: Definitions = {
  resistor: {
    fields: { ohms: positive, celsius, temperatureCoefficient: finite, referenceCelsius: celsius },
    required: ["ohms"],
    // Without it a temperature means nothing, and the element is its own part for good.
    topological: ["temperatureCoefficient"],
    terminals: between,
    parts: (element) => [
      element.temperatureCoefficient === undefined ? element : { ...element, ohms: resistorOhms(element) },
    ],
    amps: ({ id }) => [[id, 1]],
  },
  capacitor: {
    ...itself<Of<"capacitor">>(),
    fields: { farads: positive },
    required: ["farads"],
    terminals: between,
  },
  inductor: {
    ...itself<Of<"inductor">>(),
    fields: { henries: positive },
    required: ["henries"],
    terminals: between,
  },
  voltageSource: {
    ...itself<Of<"voltageSource">>(),
    fields: { volts: finite, ohms: positive },
    required: ["volts"],
    topological: ["ohms"],
    terminals: poles,
  },
  currentSource: {
    ...itself<Of<"currentSource">>(),
    fields: { amps: finite },
    required: ["amps"],
    terminals: (element) => [element.from, element.to],
  },
  diode: {
    fields: {
      saturationAmps: positive,
      emission: positive,
      celsius,
      seriesOhms: positive,
      breakdownVolts: positive,
      breakdownAmps: positive,
      breakdownEmission: positive,
    },
    required: [],
    topological: ["seriesOhms"],
    terminals: (element) => [element.anode, element.cathode],
    parts: (element) => {
      const { id, anode, seriesOhms: ohms } = element;
      if (ohms === undefined) return [element];
      const inner = innerNode(element);
      return [
        { kind: "resistor", id: `${id}#series`, a: anode, b: inner, ohms },
        { ...element, anode: inner },
      ];
    },
    amps: (element) => [[element.id, 1]],
  },
  switch: {
    ...itself<Of<"switch">>(),
    fields: { closed: flag, closedOhms: positive, openOhms: positive },
    required: ["closed"],
    terminals: between,
  },
  filament: filamentDefinition,
  regulator: {
    ...itself<Of<"regulator">>(),
    fields: {
      volts: positive,
      limitAmps: positive,
      dropoutVolts: notNegative,
      quiescentAmps: notNegative,
      outputOhms: positive,
      foldbackAmps: positive,
      reverseOhms: positive,
    },
    required: ["volts", "limitAmps"],
    topological: ["reverseOhms"],
    terminals: (element) => [element.input, element.output, element.reference],
    refuse: ({ limitAmps, foldbackAmps = limitAmps }) =>
      foldbackAmps <= limitAmps
        ? undefined
        : { message: "foldbackAmps must be no more than limitAmps.", field: "foldbackAmps" },
    parts: regulatorParts,
    amps: ({ id, reverseOhms }) =>
      reverseOhms === undefined
        ? [[id, 1]]
        : [
            [id, 1],
            [`${id}#reverse`, -1],
          ],
  },
  curve: curveDefinition,
  controlledSource: {
    ...itself<Of<"controlledSource">>(),
    fields: { gain: finite },
    required: ["gain"],
    terminals: poles,
    refuse: checkControl,
  },
};
