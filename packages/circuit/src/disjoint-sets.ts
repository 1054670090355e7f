/** Union–find over 0 … count−1. */
export interface DisjointSets {
  find(item: number): number;
  /** Joins two sets; false when they were one already. */
  join(a: number, b: number): boolean;
}

export function createDisjointSets(count: number): DisjointSets {
  const parent = new Int32Array(count);
  for (let i = 0; i < count; i++) parent[i] = i;
  const find = (item: number): number => {
    let root = item;
    while (parent[root] !== root) root = parent[root];
    for (let at = item; parent[at] !== root; ) {
      const next = parent[at];
      parent[at] = root;
      at = next;
    }
    return root;
  };
  return {
    find,
    join(a, b) {
      const rootA = find(a);
      const rootB = find(b);
      parent[rootA] = rootB;
      return rootA !== rootB;
    },
  };
}
