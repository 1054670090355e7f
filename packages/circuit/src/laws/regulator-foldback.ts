import { logistic, softplus } from "./bends";

// The share of its full limit that a folding regulator has at an output voltage, as a part of the nominal one. `fold` is
// the share left at 0 V. One straight line, fold + (1 − fold)·part, that ends smoothly a little below 0 V.

/** How far below 0 V the line ends: far enough to be straight at 0 V, and so soon that something of `fold` is left. */
export const foldbackEnd = (fold: number): number => Math.min(fold, 0.1) / 2;

/** Width of the bend at that end. */
const bendOf = (fold: number): number => foldbackEnd(fold) / 25;

export function foldbackShare(fold: number, part: number): number {
  const bend = bendOf(fold);
  const end = foldbackEnd(fold);
  return fold + (1 - fold) * (bend * softplus((part + end) / bend) - end);
}

/** Its slope. */
export const foldbackSlope = (fold: number, part: number): number =>
  (1 - fold) * logistic((part + foldbackEnd(fold)) / bendOf(fold));
