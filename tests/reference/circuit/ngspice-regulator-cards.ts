import type { WriteCard } from "./ngspice-cards";

/** The regulator's published equations (packages/circuit/src/devices/regulator.ts) as behavioural sources. */
export const regulatorCard: WriteCard<"regulator"> = (element, { i, node }) => {
  const [input, output, reference] = [node(element.input), node(element.output), node(element.reference)];
  if (element.foldbackAmps !== undefined || element.reverseOhms !== undefined)
    throw new Error("A card is written for a regulator without fold-back and way back only.");
  const { volts, limitAmps, dropoutVolts = 0.5, quiescentAmps = 0, outputOhms = 0.01 } = element;
  const softplus = (x: string) => `(max(${x},0)+ln(1+exp(-abs(${x}))))`;
  const bend = limitAmps / 1000;
  const lack = `((${volts}-v(${input},${reference})+${dropoutVolts})/5e-3)`;
  return {
    lines: [
      `bt${i} t${i} 0 v=${volts}-5e-3*${softplus(lack)}`,
      `bz${i} z${i} 0 v=(v(t${i})-v(${output},${reference}))/${outputOhms * bend}`,
      `bo${i} ${input} ${output} i=${bend}*(${softplus(`v(z${i})`)}-${softplus(`(v(z${i})-1000)`)})`,
      `bq${i} ${input} ${reference} i=${quiescentAmps}*tanh(v(${input},${reference}))`,
      `rli${i} ${input} ${reference} 1e12`,
      `rlo${i} ${output} ${reference} 1e12`,
    ],
  };
};
