import type { Led } from "../kinds/led";
import type { Diode } from "../network";
import type { ElementDefinition } from "./definition";
import { primitives } from "./primitives";
import { ratedCelsius, saturationOf } from "./rated-junction";
import { celsius, finite, positive } from "./rules";

export const ledDefinition: ElementDefinition<Led> = {
  fields: {
    ratedVolts: positive,
    ratedAmps: positive,
    seriesOhms: positive,
    emission: positive,
    celsius,
    voltsPerKelvin: finite,
    breakdownVolts: positive,
  },
  required: ["ratedVolts", "ratedAmps"],
  topological: ["seriesOhms"],
  terminals: ({ anode, cathode }) => [anode, cathode],
  refuse(element) {
    if (saturationOfLed(element) !== undefined) return undefined;
    const message = `ratedVolts, less what seriesOhms drop and at this temperature, must leave a junction between 0 and 190 thermal volts; it has ${junctionVolts(element)} V.`;
    return { message, field: "ratedVolts" };
  },
  parts: (element) => primitives.diode.parts(junctionOf(element), 0, false),
  amps: ({ id }) => [[`${id}#junction`, 1]],
};

/** What the junction alone drops at the rated current. */
function junctionVolts(element: Led): number {
  const {
    ratedVolts,
    ratedAmps,
    seriesOhms = 0,
    voltsPerKelvin = -0.002,
    celsius: t = ratedCelsius,
  } = element;
  return ratedVolts + voltsPerKelvin * (t - ratedCelsius) - seriesOhms * ratedAmps;
}

const emissionOf = ({ emission = 2 }: Led): number => emission;

const saturationOfLed = (element: Led): number | undefined =>
  saturationOf(
    junctionVolts(element),
    element.ratedAmps,
    emissionOf(element),
    element.celsius ?? ratedCelsius,
  );

function junctionOf(element: Led): Diode {
  const saturationAmps = saturationOfLed(element);
  if (saturationAmps === undefined) throw new Error(`"${element.id}" was not checked before it was built.`);
  return {
    kind: "diode",
    id: `${element.id}#junction`,
    anode: element.anode,
    cathode: element.cathode,
    saturationAmps,
    emission: emissionOf(element),
    celsius: element.celsius ?? ratedCelsius,
    ...(element.seriesOhms === undefined ? {} : { seriesOhms: element.seriesOhms }),
    ...(element.breakdownVolts === undefined ? {} : { breakdownVolts: element.breakdownVolts }),
  };
}
