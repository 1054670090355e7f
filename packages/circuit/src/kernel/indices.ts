/** Small whole numbers: 16 bits each where that is enough, for the whole kernel has to fit the nearest cache. */
export type Indices = Uint16Array | Uint32Array;

/** Packs numbers of which none is above `largest`. */
export const packIndices = (list: ArrayLike<number>, largest: number): Indices =>
  largest <= 0xffff ? Uint16Array.from(list) : Uint32Array.from(list);
