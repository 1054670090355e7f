import type { Relay } from "../kinds/relay";

/**
 * Discrete states of a relay: 0 released, 1 energised, and for one whose armature takes time, from 2 on: phase 0 … n on
 * the way to the coil, then phase 0 … n on the way back, with n the number of bounces' edges. Phase 0 is the flight, in
 * which neither contact is made; after it the contact that was reached is closed in odd phases and open in even ones.
 */
export const released = 0;
export const energised = 1;
const firstPhase = 2;

/** Times of the armature's way, s. */
export interface Travel {
  /** When each phase on the way to the coil ends. */
  readonly up: readonly number[];
  readonly down: readonly number[];
}

/** undefined when contacts change over at once. */
export function travelOf(relay: Relay): Travel | undefined {
  const { operateTravelSeconds = 0, releaseTravelSeconds = 0, bounceSeconds = [] } = relay;
  if (operateTravelSeconds === 0 && releaseTravelSeconds === 0 && bounceSeconds.length === 0)
    return undefined;
  const edges = [0, ...bounceSeconds];
  return {
    up: edges.map((seconds) => (operateTravelSeconds ?? 0) + seconds),
    down: edges.map((seconds) => (releaseTravelSeconds ?? 0) + seconds),
  };
}

export type Phase = { readonly way: "up" | "down"; readonly index: number } | undefined;

/** Where on its way the armature is in a state; undefined at rest. */
export function phaseOf(state: number, travel: Travel | undefined): Phase {
  if (state < firstPhase || travel === undefined) return undefined;
  const index = state - firstPhase;
  const count = travel.up.length;
  return index < count ? { way: "up", index } : { way: "down", index: index - count };
}

export function stateOf(way: "up" | "down", index: number, travel: Travel): number {
  const count = travel.up.length;
  if (index >= count) return way === "up" ? energised : released;
  return firstPhase + index + (way === "up" ? 0 : count);
}

/** Which contacts conduct in a state. */
export function contactsOf(state: number, travel: Travel | undefined): { make: boolean; break: boolean } {
  const phase = phaseOf(state, travel);
  if (phase === undefined) return { make: state === energised, break: state === released };
  const isTouching = phase.index % 2 === 1;
  return { make: phase.way === "up" && isTouching, break: phase.way === "down" && isTouching };
}

/** Length of the way in seconds towards the coil, and the rate back along it. */
export function lengthOf(travel: Travel): { readonly length: number; readonly backRate: number } {
  const length = Math.max(travel.up.at(-1) ?? 0, shortest);
  return { length, backRate: -length / Math.max(travel.down.at(-1) ?? 0, shortest) };
}

/**
 * How the armature moves in a state. Where there is no time it has arrived, by a hair beyond the end, so that the state at
 * the end of its way is entered.
 */
export function motionIn(state: number, travel: Travel): { readonly rate: number; readonly settled: number } {
  const { length, backRate } = lengthOf(travel);
  const phase = phaseOf(state, travel);
  if (phase === undefined) return { rate: 0, settled: state === energised ? length : 0 };
  return phase.way === "up"
    ? { rate: 1, settled: length * (1 + hair) }
    : { rate: backRate, settled: -length * hair };
}

const hair = 1e-6;

/** A way that takes no time is given a microsecond, so that it has a speed. */
const shortest = 1e-6;
