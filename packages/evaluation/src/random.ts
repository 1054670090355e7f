import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import type { RandomGenerator } from "pure-rand/types/RandomGenerator";

/**
 * 32-bit hash of a text: FNV-1a over its UTF-16 code units (low byte, then high byte), then the final mix of
 * MurmurHash3, so that texts which differ in their last letter only give unrelated numbers. Part of the promise
 * "same seed, same variant": never change it within an engine version.
 */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) | 0;
}

/**
 * A generator of its own for each thing that is drawn (`candidate`, `complaint`, `fault 0 ohms` …): a new kind of draw
 * never shifts the others.
 */
export function stream(seed: string, purpose: string): RandomGenerator {
  return xoroshiro128plus(hashText(`${seed}\n${purpose}`));
}

/** Even in [0, 1). */
export const unit = (generator: RandomGenerator): number => uniformFloat64(generator);

/** Index drawn in proportion to the weights (all above 0). */
export function weightedIndex(generator: RandomGenerator, weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  let rest = unit(generator) * total;
  for (const [index, weight] of weights.entries()) {
    rest -= weight;
    if (rest < 0) return index;
  }
  return weights.length - 1;
}
