import type { WriteCard } from "./ngspice-cards";
import { motorAnalog } from "./transient-motor-cases";

export const motorCard: WriteCard<"motor"> = (element, { i, node }) => {
  if (element.windingToHousing !== undefined || element.locked || (element.celsius ?? 20) !== 20)
    throw new Error("A card is written for a motor that turns, at 20 °C only.");
  return { lines: motorAnalog(element, node(element.plus), node(element.minus), `${i}`), amps: `i(vm${i})` };
};

/** Open-circuit volts at tenths of the charge; source: Ver-Mac manual p. 42 (see packages/circuit, physics/battery-charge). */
const openVolts = [11.56, 11.72, 11.88, 12.02, 12.12, 12.2, 12.28, 12.36, 12.46, 12.58, 12.7];

/** v = open + (R + Rp)·i + Ra·i⁺ at rest, as the element's law states it. */
export const batteryCard: WriteCard<"battery"> = (element, { i, node }) => {
  const { capacityAmpereHours: capacity, stateOfCharge: s = 1, celsius = 25, resistanceScale = 1 } = element;
  const { ohms = 0.2 / capacity, polarisationOhms = 0.1 / capacity, cells = 6, voltsAbove = 0 } = element;
  const open = openVolts[Math.round(10 * s)];
  if (open === undefined || Math.abs(10 * s - Math.round(10 * s)) > 1e-12 || element.openVolts !== undefined)
    throw new Error("A card is written for whole tenths of the charge only.");
  const volts = (cells / 6) * (open + voltsAbove + (0.024 / 5.6) * (celsius - 25));
  const discharge =
    resistanceScale * 2 ** ((25 - celsius) / 43) * (1 + 2 * (1 - s) ** 2) * (ohms + polarisationOhms);
  const acceptance = resistanceScale * (0.03 + 0.32 * s ** 4) * (60 / capacity);
  const amps = `i(v${i})`;
  const charging = `(${amps} > 0 ? ${amps}*(1-exp(-${amps}/0.01)) : 0)`;
  return {
    lines: [
      `v${i} ${node(element.positive)} x${i} 0`,
      `b${i} x${i} ${node(element.negative)} v=${volts}+${discharge}*${amps}+${acceptance}*${charging}`,
    ],
    amps,
  };
};

/** Steady output without sense and lamp terminals, in the words of laws/alternator. */
export const alternatorCard: WriteCard<"alternator"> = (element, { i, node }) => {
  if (element.sense !== undefined || element.lamp !== undefined || element.diodeOpen || element.diodeShorted)
    throw new Error("A card is written for a sound alternator that looks at its own B+ only.");
  const { radiansPerSecond: w, regulatedVolts = 14.4, voltsPerKelvin = -0.01, celsius = 20 } = element;
  const { bandVolts = 0.1, ratedAmps = 120, ratedRadiansPerSecond: rated = 200 * Math.PI } = element;
  const {
    cutInRadiansPerSecond: cutIn = (1100 * Math.PI) / 30,
    ohms = 0.02,
    fieldScale = 1,
    leakOhms = 1e8,
  } = element;
  const emf = (13.5 * w) / cutIn;
  const reaction = Math.sqrt(((13.5 * rated) / cutIn - 13.5) ** 2 / ratedAmps ** 2 - ohms ** 2);
  const source = Math.hypot(ohms, (reaction * w) / rated);
  const set = regulatedVolts + voltsPerKelvin * (celsius - 20);
  const [plus, minus] = [node(element.plus), node(element.minus)];
  const softplus = (x: string) => `(max(${x},0)+ln(1+exp(-abs(${x}))))`;
  const bend = 0.02;
  return {
    lines: [
      `bz${i} z${i} 0 v=0.5+(${set}-v(${plus},${minus}))/${bandVolts}`,
      `bf${i} f${i} 0 v=${fieldScale * bend}*(${softplus(`(v(z${i})/${bend})`)}-${softplus(`((v(z${i})-1)/${bend})`)})`,
      `bs${i} y${i} 0 v=${emf}*v(f${i})-v(${plus},${minus})`,
      `v${i} ${plus} x${i} 0`,
      `bo${i} ${minus} x${i} i=v(y${i}) > 0 ? v(y${i})*(1-exp(-v(y${i})/0.05))/${source} : 0`,
      `rl${i} x${i} ${minus} ${leakOhms}`,
    ],
    amps: `i(v${i})`,
  };
};
