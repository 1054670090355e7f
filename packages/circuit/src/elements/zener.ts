import { junctionLeak } from "../devices/diode";
import type { Zener } from "../kinds/zener";
import type { Diode } from "../network";
import type { ElementDefinition } from "./definition";
import { primitives } from "./primitives";
import { mostThermalVolts, ratedCelsius, thermalVolts } from "./rated-junction";
import { celsius, finite, positive } from "./rules";

export const zenerDefinition: ElementDefinition<Zener> = {
  fields: {
    breakdownVolts: positive,
    testAmps: positive,
    dynamicOhms: positive,
    forwardVolts: positive,
    forwardAmps: positive,
    seriesOhms: positive,
    celsius,
    voltsPerKelvin: finite,
  },
  required: ["breakdownVolts"],
  topological: ["seriesOhms"],
  terminals: ({ anode, cathode }) => [anode, cathode],
  refuse: (element) => {
    const junction = rate(element);
    return "message" in junction ? junction : undefined;
  },
  parts(element) {
    const junction = rate(element);
    if ("message" in junction) throw new Error(`"${element.id}" was not checked before it was built.`);
    return primitives.diode.parts(junction, 0, false);
  },
  amps: ({ id }) => [[`${id}#junction`, 1]],
};

/** The junction that meets the data sheet, or why none does. */
function rate(element: Zener): Diode | { readonly message: string; readonly field: string } {
  const { testAmps = 5e-3, dynamicOhms = 10, forwardVolts = 0.8, forwardAmps = 1e-2 } = element;
  const { seriesOhms, celsius: t = ratedCelsius, voltsPerKelvin = 0 } = element;
  const series = seriesOhms ?? 0;
  if (!(dynamicOhms > series))
    return { message: "dynamicOhms must be more than seriesOhms.", field: "dynamicOhms" };

  const breakdown = element.breakdownVolts + voltsPerKelvin * (t - ratedCelsius) - series * testAmps;
  if (!(breakdown > 0)) {
    const message = `breakdownVolts, less what seriesOhms drop and at this temperature, must be above 0 V; they leave ${breakdown} V.`;
    return { message, field: "breakdownVolts" };
  }
  const forward = forwardVolts - 0.002 * (t - ratedCelsius) - series * forwardAmps;
  const thermal = thermalVolts(t);
  if (!(forward > 0 && forward <= mostThermalVolts * thermal)) {
    const message = `forwardVolts, less what seriesOhms drop and at this temperature, must leave a junction between 0 and ${mostThermalVolts} thermal volts; they leave ${forward} V.`;
    return { message, field: "forwardVolts" };
  }

  // Two rated points, two unknowns: Is·a + Ib·b = forward amps and Is·c + Ib·d = test amps, the leak taken off.
  const soft = (dynamicOhms - series) * testAmps;
  const atZero = Math.exp(-breakdown / soft);
  const [a, b] = [Math.expm1(forward / thermal), -atZero * Math.expm1(-forward / soft)];
  const [c, d] = [-Math.expm1(-breakdown / thermal), -Math.expm1(-breakdown / soft)];
  const [p, q] = [forwardAmps - junctionLeak * forward, testAmps - junctionLeak * breakdown];
  const saturationAmps = (p * d - q * b) / (a * d - b * c);
  const breakdownAmps = (q * a - p * c) / (a * d - b * c);
  if (!(saturationAmps > 0)) {
    return {
      message: "forwardAmps are less than a breakdown so soft passes forwards.",
      field: "forwardAmps",
    };
  }
  if (!(breakdownAmps > 0)) return { message: "testAmps are less than the leak passes.", field: "testAmps" };
  return {
    kind: "diode",
    id: `${element.id}#junction`,
    anode: element.anode,
    cathode: element.cathode,
    saturationAmps,
    celsius: t,
    breakdownVolts: breakdown,
    breakdownAmps,
    breakdownEmission: soft / thermal,
    ...(seriesOhms === undefined ? {} : { seriesOhms }),
  };
}
