/** Whole numbers, taken out smallest first (a binary heap). */
export interface RankQueue {
  push(rank: number): void;
  /** The smallest, or −1 when there is none. */
  pop(): number;
}

export function createRankQueue(): RankQueue {
  const heap: number[] = [];
  const swap = (i: number, j: number): void => {
    const kept = heap[i];
    heap[i] = heap[j];
    heap[j] = kept;
  };
  const sink = (): void => {
    for (let at = 0; ; ) {
      const left = 2 * at + 1;
      let least = at;
      if (left < heap.length && heap[left] < heap[least]) least = left;
      if (left + 1 < heap.length && heap[left + 1] < heap[least]) least = left + 1;
      if (least === at) return;
      swap(at, least);
      at = least;
    }
  };
  return {
    push(rank) {
      let at = heap.push(rank) - 1;
      for (let up = (at - 1) >> 1; at > 0 && heap[up] > heap[at]; up = (at - 1) >> 1) {
        swap(at, up);
        at = up;
      }
    },
    pop() {
      if (heap.length === 0) return -1;
      const least = heap[0];
      const last = heap.pop();
      if (heap.length > 0 && last !== undefined) {
        heap[0] = last;
        sink();
      }
      return least;
    },
  };
}
