import type { Diode } from "@probeworthy/circuit";
import type { WriteCard } from "./ngspice-cards";

/** k/q in V/K: exact since 2019 (CODATA 2018), and as ngspice 45 has it, from an older table. */
const boltzmannOverCharge = 1.380649e-23 / 1.602176634e-19;
const boltzmannOverChargeInNgspice = 1.38064852e-23 / 1.6021766208e-19;
/** The same thermal voltage comes out in ngspice at a temperature that is higher by this factor. */
const kelvinFactor = boltzmannOverCharge / boltzmannOverChargeInNgspice;

const thermalVolts = (celsius: number): number => boltzmannOverCharge * (celsius + 273.15);
const leak = 1e-12;

type Law = Omit<Diode, "kind" | "id" | "anode" | "cathode">;

/** Model line of a junction. Its temperature is stated as the model's and the device's, so that nothing is rescaled. */
export function junctionModel(name: string, law: Law): string {
  const { saturationAmps = 1e-14, emission = 1, celsius = 27, seriesOhms } = law;
  const shifted = (celsius + 273.15) * kelvinFactor - 273.15;
  const rs = seriesOhms === undefined ? "" : `rs=${seriesOhms}`;
  // ngspice scales a saturation current from tnom to the temperature of the deck, 27 °C, unless told otherwise; an emission
  // that gives the wanted thermal voltage at 27 °C needs no temperature at all.
  const asOfDeck = (emission * (shifted + 273.15)) / 300.15;
  return `.model ${name} d(is=${saturationAmps} n=${asOfDeck} ${rs} ${breakdown(law)})`;
}

/**
 * We let Ib·exp(−(v + vb)/vr) flow backwards, Ib being 1 mA unless stated. ngspice looks for the knee at which
 * Is·(exp((bv − knee)/vt) − 1 + knee/vt) is Ib (diotemp.c), some microvolts beside: so it is told the voltage that gives
 * our knee.
 */
function breakdown({ breakdownVolts, breakdownAmps = 1e-3, saturationAmps = 1e-14, ...law }: Law): string {
  if (breakdownVolts === undefined) return "";
  if (law.breakdownEmission !== undefined) throw new Error("A softer breakdown is written as a source.");
  const thermal = (law.emission ?? 1) * thermalVolts(law.celsius ?? 27);
  const ratio = breakdownAmps / saturationAmps;
  const knee = breakdownVolts - thermal * Math.log(ratio);
  return `bv=${knee + thermal * Math.log(ratio + 1 - knee / thermal)} ibv=${breakdownAmps}`;
}

export const diodeCard: WriteCard<"diode"> = (element, { i, node }) => ({
  lines: [junctionModel(`d${i}m`, element), `d${i} ${node(element.anode)} ${node(element.cathode)} d${i}m`],
  amps: `i(@d${i}[id])`,
});

/** Shockley's law turned round: what flows at `volts` is `amps`, the leak taken off. */
export const ratedSaturation = (volts: number, amps: number, emission: number, celsius: number): number =>
  (amps - leak * volts) / Math.expm1(volts / (emission * thermalVolts(celsius)));

/** ngspice takes no saturation current below 1e-28 A, which a blue diode in the cold has. */
const leastSaturation = 1e-24;

export const ledCard: WriteCard<"led"> = (element, { i, node }) => {
  const { ratedVolts, ratedAmps, seriesOhms, emission = 2, celsius = 25, voltsPerKelvin = -0.002 } = element;
  const volts = ratedVolts + voltsPerKelvin * (celsius - 25) - (seriesOhms ?? 0) * ratedAmps;
  const saturation = ratedSaturation(volts, ratedAmps, emission, celsius);
  const saturationAmps = Math.max(saturation, leastSaturation);
  // With the larger current the same curve begins so much lower; the leak that this shifts too is made up for.
  const offset = emission * thermalVolts(celsius) * Math.log(saturationAmps / saturation);
  const law = {
    saturationAmps,
    emission,
    celsius,
    ...(seriesOhms === undefined ? {} : { seriesOhms }),
    ...(element.breakdownVolts === undefined ? {} : { breakdownVolts: element.breakdownVolts + offset }),
  };
  const [a, c] = [node(element.anode), node(element.cathode)];
  return {
    lines: [
      junctionModel(`d${i}m`, law),
      `v${i} ${a} x${i} ${offset}`,
      `d${i} x${i} ${c} d${i}m`,
      `i${i} x${i} ${c} ${leak * offset}`,
    ],
    amps: `i(v${i})`,
  };
};

/** The two exponentials as the element states them, at 25 °C and without series resistance, each through its rated point. */
export const zenerCard: WriteCard<"zener"> = (element, { i, node }) => {
  const {
    breakdownVolts: vb,
    testAmps = 5e-3,
    dynamicOhms = 10,
    forwardVolts = 0.8,
    forwardAmps = 1e-2,
  } = element;
  if (element.seriesOhms !== undefined || (element.celsius ?? 25) !== 25)
    throw new Error("A card is written for a regulator diode at 25 °C without series resistance only.");
  const [vt, vr] = [thermalVolts(25), dynamicOhms * testAmps];
  // Newton's method for the two unknowns would do as well: what one exponential adds at the other's point is next to nothing.
  let [is, ib] = [0, 0];
  for (let round = 0; round < 50; round++) {
    const backwards = ib * (Math.exp(-(forwardVolts + vb) / vr) - Math.exp(-vb / vr));
    is = (forwardAmps - leak * forwardVolts + backwards) / Math.expm1(forwardVolts / vt);
    ib = (testAmps - leak * vb + is * Math.expm1(-vb / vt)) / (1 - Math.exp(-vb / vr));
  }
  const [a, c] = [node(element.anode), node(element.cathode)];
  const v = `v(${a},${c})`;
  const forward = `${is}*(exp(min(${v}/${vt},100))-1)`;
  const backward = `${ib}*(exp(min(-(${v}+${vb})/${vr},100))-${Math.exp(-vb / vr)})`;
  return { lines: [`b${i} ${a} ${c} i=${forward}-${backward}+${leak}*${v}`], amps: `i(@b${i}[i])` };
};
