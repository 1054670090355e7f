import type { CircuitElement } from "@probeworthy/circuit";
import type { WriteCard } from "./ngspice-cards";

/** k/q in V/K: exact since 2019 (CODATA 2018), and as ngspice 45 has it, from an older table. */
const boltzmannOverCharge = 1.380649e-23 / 1.602176634e-19;
const boltzmannOverChargeInNgspice = 1.38064852e-23 / 1.6021766208e-19;
/** The same thermal voltage comes out in ngspice at a temperature that is higher by this factor. */
const kelvinFactor = boltzmannOverCharge / boltzmannOverChargeInNgspice;

const breakdownAmps = 1e-3;

export const diodeCard: WriteCard<"diode"> = (element, { i, node }) => {
  const kelvin = (element.celsius ?? 27) + 273.15;
  const celsius = kelvin * kelvinFactor - 273.15;
  const rs = element.seriesOhms === undefined ? "" : `rs=${element.seriesOhms}`;
  const law = `is=${element.saturationAmps ?? 1e-14} n=${element.emission ?? 1} tnom=${celsius} ${rs} ${breakdown(element)}`;
  const [a, c] = [node(element.anode), node(element.cathode)];
  return {
    lines: [`.model d${i}m d(${law})`, `d${i} ${a} ${c} d${i}m temp=${celsius}`],
    amps: `i(@d${i}[id])`,
  };
};

/**
 * We let Is·exp((v − knee)/vt) be 1 mA at the breakdown voltage. ngspice looks for the knee at which
 * Is·(exp((bv − knee)/vt) − 1 + knee/vt) is (diotemp.c), some microvolts beside: so it is told the voltage that gives our knee.
 */
function breakdown({
  breakdownVolts,
  saturationAmps = 1e-14,
  emission = 1,
  celsius = 27,
}: CircuitElement & { kind: "diode" }): string {
  if (breakdownVolts === undefined) return "";
  const thermal = emission * boltzmannOverCharge * (celsius + 273.15);
  const ratio = breakdownAmps / saturationAmps;
  const knee = breakdownVolts - thermal * Math.log(ratio);
  return `bv=${knee + thermal * Math.log(ratio + 1 - knee / thermal)} ibv=${breakdownAmps}`;
}
