import type { WriteCard } from "./ngspice-cards";

/** The published curve (packages/circuit/src/devices/filament.ts) as a behavioural source. */
export const filamentCard: WriteCard<"filament"> = (element, { i, node }) => {
  const { ratedVolts: v0, ratedWatts: w0, exponent = 0.55, coldRatio = 1 / 15 } = element;
  const cold = (coldRatio * v0 * v0) / w0;
  const knee = v0 / Math.sqrt(coldRatio ** (2 / (exponent - 1)) - 1);
  const [a, b] = [node(element.a), node(element.b)];
  const v = `v(${a},${b})`;
  return {
    lines: [`b${i} ${a} ${b} i=${v}/${cold}*(1+(${v}/${knee})^2)^(${(exponent - 1) / 2})`],
    amps: `i(@b${i}[i])`,
  };
};
