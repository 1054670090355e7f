/** Items 0 … n−1 kept in doubly linked lists by an integer count, so the fewest come first without sorting. */
export interface CountBuckets {
  insert(item: number, count: number): void;
  remove(item: number): void;
  /** First item with exactly this count, or −1. */
  first(count: number): number;
  /** The item after this one in its list, or −1. */
  after(item: number): number;
}

export function createCountBuckets(items: number, counts: number): CountBuckets {
  const head = new Int32Array(counts + 1).fill(-1);
  const next = new Int32Array(items).fill(-1);
  const previous = new Int32Array(items).fill(-1);
  const bucket = new Int32Array(items).fill(-1);
  return {
    insert(item, count) {
      const old = head[count];
      next[item] = old;
      previous[item] = -1;
      if (old >= 0) previous[old] = item;
      head[count] = item;
      bucket[item] = count;
    },
    remove(item) {
      const before = previous[item];
      const behind = next[item];
      if (before >= 0) next[before] = behind;
      else head[bucket[item]] = behind;
      if (behind >= 0) previous[behind] = before;
    },
    first: (count) => head[count],
    after: (item) => next[item],
  };
}
