import type { FuseType } from "./fuse-curve";

/**
 * Share of the printed rating that a fuse carries in continuous use, by ambient °C. Sources: maker's data sheets as
 * transcribed in public project notes.
 * Type E: 40 A to 20 °C, 34 A at 65, 30 A at 85, 25 A at 110, 22 A at 125 °C.
 * Type F: 15 A part 13 A at 20 °C, 9 A at 100 °C; 5 and 7.5 A parts 4 and 6 A at 40 °C, on the same straight line.
 * Nothing is printed for type C (taken as F) and for bolted strips (taken as E): assumptions.
 */
const small: readonly (readonly [number, number])[] = [
  [20, 13 / 15],
  [100, 9 / 15],
];
const large: readonly (readonly [number, number])[] = [
  [20, 1],
  [65, 34 / 40],
  [85, 30 / 40],
  [110, 25 / 40],
  [125, 22 / 40],
];
const tables: Readonly<Record<FuseType, readonly (readonly [number, number])[]>> = {
  C: small,
  F: small,
  E: large,
  bolted: large,
};

/** However hot, some rating is left: the formula must not divide by zero. */
const leastShare = 0.05;

/**
 * Continuous amps the maker recommends at an ambient temperature: straight between the printed points, held below
 * 20 °C, along the last line beyond the hottest point (at least 5 % of the rating).
 */
export function fuseContinuousAmps(type: FuseType, ratedAmps: number, ambientCelsius: number): number {
  return ratedAmps * shareAt(tables[type], ambientCelsius);
}

/**
 * Factor on the rating that shifts the time–current curve: 1 at 20 °C, where the windows are measured, and in
 * proportion to the recommended continuous current elsewhere.
 */
export function fuseDerating(type: FuseType, ambientCelsius: number): number {
  return shareAt(tables[type], ambientCelsius) / shareAt(tables[type], 20);
}

function shareAt(table: readonly (readonly [number, number])[], celsius: number): number {
  const found = table.findIndex(([at]) => at >= celsius);
  const upper = found === -1 ? table.length - 1 : Math.max(1, found);
  const [t1, s1] = table[upper - 1] ?? [20, 1];
  const [t2, s2] = table[upper] ?? [125, 1];
  const at = Math.max(t1, celsius);
  return Math.max(leastShare, s1 + ((s2 - s1) * (at - t1)) / (t2 - t1));
}
