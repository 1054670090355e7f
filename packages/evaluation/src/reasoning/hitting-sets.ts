/**
 * Every minimal set that has at least one member in common with each conflict: the minimal diagnoses (Reiter 1987,
 * de Kleer and Williams 1987). Members are sorted within a set, sets by size and then by their members. An empty
 * conflict cannot be hit: no set. No conflict: the empty set.
 */
export function minimalHittingSets(conflicts: readonly (readonly string[])[]): string[][] {
  let sets: string[][] = [[]];
  for (const conflict of conflicts) {
    const hit = sets.filter((set) => set.some((member) => conflict.includes(member)));
    const grown = sets
      .filter((set) => !hit.includes(set))
      .flatMap((set) => [...new Set(conflict)].map((member) => [...set, member].sort()));
    sets = [...hit];
    for (const candidate of distinct(grown)) {
      if (!hit.some((set) => set.every((member) => candidate.includes(member)))) sets.push(candidate);
    }
    sets = sets.filter(
      (set) => !sets.some((other) => other !== set && other.every((member) => set.includes(member))),
    );
  }
  return sets.sort((a, b) => a.length - b.length || (a.join() < b.join() ? -1 : 1));
}

const distinct = (sets: readonly string[][]): string[][] => [
  ...new Map(sets.map((set) => [JSON.stringify(set), set])).values(),
];
