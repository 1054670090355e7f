import type { CircuitElement } from "@probeworthy/circuit";
import type { WriteCard } from "./ngspice-cards";

type Thermistor = CircuitElement & { kind: "thermistor" };

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

/** R(v) = cold·(1 + 1.6·w/(1 + w)), w = (v/half)², through the stated drop at the rating. */
export const fuseCard: WriteCard<"fuse"> = (element, { i, node }) => {
  const { ratedAmps, coldOhms, ratedDropVolts, isBlown = false, openOhms = 1e12 } = element;
  const [a, b] = [node(element.a), node(element.b)];
  if (isBlown) return { lines: [`r${i} ${a} ${b} ${openOhms}`], amps: `i(@r${i}[i])` };
  if (coldOhms === undefined || ratedDropVolts === undefined)
    throw new Error("A card is written for a fuse of stated resistance and drop only.");
  const rise = (ratedDropVolts / (coldOhms * ratedAmps) - 1) / 1.6;
  const half = ratedDropVolts * Math.sqrt((1 - rise) / rise);
  const v = `v(${a},${b})`;
  const w = `(${v}/${half})^2`;
  return { lines: [`b${i} ${a} ${b} i=${v}/(${coldOhms}*(1+1.6*${w}/(1+${w})))`], amps: `i(@b${i}[i])` };
};

/** A square law by its points: the parabola, nothing below 0 V, straight beyond the last point. */
export const curveCard: WriteCard<"curve"> = ({ a, b, points }, { i, node }) => {
  const [last, amps] = points.at(-1) ?? [0, 0];
  const factor = amps / (last * last);
  if (points[0]?.[0] !== 0 || points.some(([v, y]) => Math.abs(y - factor * v * v) > 1e-12 * amps))
    throw new Error("A card is written for points of a parabola that starts at 0 V only.");
  const [from, to] = [node(a), node(b)];
  const v = `v(${from},${to})`;
  const inside = `${factor}*${v}*${v}`;
  const law = `${v} < 0 ? 0 : (${v} < ${last} ? ${inside} : ${amps}+${2 * factor * last}*(${v}-${last}))`;
  return { lines: [`b${i} ${from} ${to} i=${law}`, `rl${i} ${from} ${to} 1e12`] };
};

/** A sensor as the resistance it has: IEC 60751 for platinum, Steinhart and Hart by bisection, or a point of its table. */
export const thermistorCard: WriteCard<"thermistor"> = (element, { i, node }) => ({
  lines: [`r${i} ${node(element.a)} ${node(element.b)} ${sensorOhms(element)}`],
  amps: `i(@r${i}[i])`,
});

function sensorOhms({ celsius: t, platinumOhms, steinhartHart, table }: Thermistor): number {
  if (platinumOhms !== undefined) {
    const belowZero = t < 0 ? -4.183e-12 * (t - 100) * t ** 3 : 0;
    return platinumOhms * (1 + 3.9083e-3 * t - 5.775e-7 * t * t + belowZero);
  }
  if (steinhartHart !== undefined) {
    const { a, b, c } = steinhartHart;
    let [low, high] = [-20, 40];
    for (let round = 0; round < 200; round++) {
      const middle = (low + high) / 2;
      if (a + b * middle + c * middle ** 3 < 1 / (t + 273.15)) low = middle;
      else high = middle;
    }
    return Math.exp(low);
  }
  const point = table?.find(([celsius]) => celsius === t);
  if (point === undefined)
    throw new Error("A card is written for a temperature that stands in the table only.");
  return point[1];
}
