import { type Islands, islandLeak, tiedIslandLeak } from "./connectivity";
import type { NewtonSystem } from "./kernel/newton-system";
import { cancelLeaks } from "./kernel/ports";

/**
 * Gives every node of a floating island its leak. An island of the network alone that its ports tie has none, but keeps
 * one in the matrix, which has to have an inverse without the ports.
 */
export function setLeaks(system: NewtonSystem, islands: Islands, alone: Islands): void {
  const { leak, x, ports } = system;
  const stampedLeak = system.matrix.leak;
  const before = stampedLeak.slice();
  leak.fill(0);
  for (const node of islands.floating) leak[node] = islandLeak;
  stampedLeak.set(leak);
  const tied = new Map<number, number>();
  for (const node of alone.floating) if (leak[node] === 0) tied.set(alone.sets.find(node), node);
  for (const node of tied.values()) stampedLeak[node] = tiedIslandLeak;
  if (ports) cancelLeaks(ports, [...tied.values()]);
  for (let node = 0; node < leak.length; node++) {
    if (stampedLeak[node] !== before[node]) x.stale[node] = 1;
  }
}
