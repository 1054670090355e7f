import type { FuseType } from "./fuse-curve";

type Points = readonly (readonly [ratedAmps: number, value: number])[];

/**
 * Typical cold ohms by rating. Sources: maker's data sheets as transcribed in public project notes (C 10, 20, 40 A;
 * F 7.5, 15 A; E 40 A), a technicians' forum thread (C 15 A).
 */
const medium: Points = [
  [10, 7.7e-3],
  [15, 4.8e-3],
  [20, 3.38e-3],
  [40, 1.44e-3],
];
const small: Points = [
  [7.5, 10.85e-3],
  [15, 4.58e-3],
];
const large: Points = [[40, 1.4e-3]];
const coldTables: Readonly<Record<FuseType, Points>> = { C: medium, F: small, E: large, bolted: large };
/** d ln R / d ln rating where one point is all there is: as between the 20 and 40 A medium blades. Assumed. */
const usualSlope = Math.log(1.44 / 3.38) / Math.log(2);

/**
 * Hot over cold ohms at the rated current, from the printed drops: C 20 A 98 mV, C 40 A 96 mV, E 40 A 75 mV (same
 * sources). Nothing is printed for type F (taken as C) and for bolted strips (taken as E): assumptions.
 */
const mediumRatio: Points = [
  [20, 98 / (3.38 * 20)],
  [40, 96 / (1.44 * 40)],
];
const largeRatio: Points = [[40, 75 / (1.4 * 40)]];
const ratioTables: Readonly<Record<FuseType, Points>> = {
  C: mediumRatio,
  F: mediumRatio,
  E: largeRatio,
  bolted: largeRatio,
};

/**
 * Typical cold resistance, Ω, of a fuse by type and rating: printed where a maker prints it, straight in log–log between
 * and beyond. For bolted strips the type E figure is assumed.
 */
export function fuseColdOhms(type: FuseType, ratedAmps: number): number {
  return alongLogarithms(coldTables[type], ratedAmps, usualSlope);
}

/** Typical ratio of hot to cold resistance at the rated current; straight in log–log, held outside the printed ratings. */
export function fuseHotRatio(type: FuseType, ratedAmps: number): number {
  const points = ratioTables[type];
  const least = points[0]?.[0] ?? ratedAmps;
  const most = points.at(-1)?.[0] ?? ratedAmps;
  return alongLogarithms(points, Math.min(most, Math.max(least, ratedAmps)), 0);
}

function alongLogarithms(points: Points, ratedAmps: number, slopeOfOne: number): number {
  const found = points.findIndex(([rating]) => rating >= ratedAmps);
  const upper = found === -1 ? points.length - 1 : Math.max(Math.min(1, points.length - 1), found);
  const [x2, y2] = points[upper] ?? [ratedAmps, 1];
  const [x1, y1] = points[upper - 1] ?? [x2, y2];
  const slope = x1 === x2 ? slopeOfOne : Math.log(y2 / y1) / Math.log(x2 / x1);
  return y2 * (ratedAmps / x2) ** slope;
}
