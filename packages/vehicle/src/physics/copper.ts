import { copperCoefficient, ohmsAt } from "@probeworthy/circuit";

/** R(t) = R₂₀ · [1 + α₂₀ (t − 20)], t in °C, with the α₂₀ of annealed copper; see the circuit's `ohmsAt`. */
export const copperOhmsAt = (ohmsAt20: number, celsius: number): number =>
  ohmsAt(ohmsAt20, celsius, copperCoefficient);

/**
 * Road-vehicle cable: cross-section in mm² and maximum conductor resistance at 20 °C in mΩ/m.
 * Source: DIN ISO 6722-3 as quoted at http://www.t3-pedia.de/index.php?oldid=3089&title=Autoelektrik_Grundlagen
 * for 1 to 120 mm²; 0.35 and 0.75 mm² from memory.
 */
export const cableTable: readonly (readonly [number, number])[] = [
  [0.35, 54.4],
  [0.5, 37.1],
  [0.75, 24.7],
  [1, 18.5],
  [1.5, 12.7],
  [2.5, 7.6],
  [4, 4.71],
  [6, 3.14],
  [10, 1.82],
  [16, 1.16],
  [25, 0.743],
  [35, 0.527],
  [50, 0.368],
  [70, 0.259],
  [95, 0.196],
  [120, 0.153],
];

/**
 * Resistance per metre at 20 °C, Ω/m. A tabulated size gives the table's figure; between two sizes the resistance is
 * taken as linear in 1/area (R = ρ/A holds piecewise); outside the table the outermost size's own ρ = R·A is kept
 * (19.04 Ω·mm²/km below 0.35 mm², 18.36 above 120 mm²).
 */
export function cableOhmsPerMetre(squareMillimetres: number): number {
  const inverse = 1 / squareMillimetres;
  const first = cableTable[0] ?? [1, 18.5];
  const last = cableTable.at(-1) ?? first;
  if (squareMillimetres <= first[0]) return (first[0] * first[1] * inverse) / 1000;
  if (squareMillimetres >= last[0]) return (last[0] * last[1] * inverse) / 1000;
  const above = cableTable.findIndex(([area]) => area >= squareMillimetres);
  const large = cableTable[above] ?? last;
  const small = cableTable[above - 1] ?? first;
  const share = (inverse - 1 / small[0]) / (1 / large[0] - 1 / small[0]);
  return (small[1] + share * (large[1] - small[1])) / 1000;
}

/** Resistance of a conductor, Ω, from its cross-section, length and temperature. */
export const conductorOhms = (squareMillimetres: number, metres: number, celsius: number): number =>
  copperOhmsAt(cableOhmsPerMetre(squareMillimetres) * metres, celsius);

/**
 * Continuous current at 30 °C ambient by cross-section, A.
 * Source: DIN VDE 0298-4 as quoted at http://www.t3-pedia.de/index.php?oldid=3089&title=Autoelektrik_Grundlagen .
 */
const ampacityTable: readonly (readonly [number, number])[] = [
  [1, 19],
  [1.5, 24],
  [2.5, 32],
  [4, 42],
  [6, 54],
  [10, 73],
  [16, 98],
  [25, 129],
  [35, 158],
  [50, 198],
];

/**
 * Continuous current a conductor carries, A. Between two sizes straight in log–log; outside the table the slope of the
 * outermost pair goes on (an extrapolation of ours: about 10 A at 0.35 mm²).
 */
export function conductorAmpacity(squareMillimetres: number): number {
  const found = ampacityTable.findIndex(([area]) => area >= squareMillimetres);
  const upper = found === -1 ? ampacityTable.length - 1 : Math.max(1, found);
  const [smallArea, smallAmps] = ampacityTable[upper - 1] ?? [1, 19];
  const [largeArea, largeAmps] = ampacityTable[upper] ?? [1.5, 24];
  const slope = Math.log(largeAmps / smallAmps) / Math.log(largeArea / smallArea);
  return smallAmps * (squareMillimetres / smallArea) ** slope;
}
