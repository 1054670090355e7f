import { type Component, relayTerminals, type VehicleDocument } from "@probeworthy/vehicle";
import type { End, ResolvedConductor } from "./conductor-ends";

/** A conductor with the end that is drawn above and the end that is drawn below. */
export interface DirectedConductor {
  readonly id: string;
  readonly upper: End;
  readonly lower: End;
}

interface Net {
  readonly ends: ReadonlyMap<string, End>;
  readonly conductors: readonly ResolvedConductor[];
}

/** Kinds that current only passes through on its way down; anything else takes part in signals. */
const passThrough: ReadonlySet<Component["kind"]> = new Set([
  "fuse",
  "switch",
  "relay",
  "twoFilamentLamp",
  "ledLamp",
  "diode",
  "lamp",
  "resistor",
  "motor",
]);

function splitIntoNets(conductors: readonly ResolvedConductor[]): readonly Net[] {
  const nets: { ends: Map<string, End>; conductors: ResolvedConductor[] }[] = [];
  const netOf = new Map<string, (typeof nets)[number]>();
  for (const conductor of conductors) {
    const touching = [conductor.from, conductor.to].flatMap((end) => netOf.get(end.joint) ?? []);
    const net = touching[0] ?? { ends: new Map<string, End>(), conductors: [] };
    if (touching.length === 0) nets.push(net);
    for (const other of touching) {
      if (other === net) continue;
      for (const [joint, end] of other.ends) {
        net.ends.set(joint, end);
        netOf.set(joint, net);
      }
      net.conductors.push(...other.conductors);
      nets.splice(nets.indexOf(other), 1);
    }
    for (const end of [conductor.from, conductor.to]) {
      net.ends.set(end.joint, net.ends.get(end.joint) ?? end);
      netOf.set(end.joint, net);
    }
    net.conductors.push(conductor);
  }
  return nets;
}

/** Through which joints the supply reaches each net, found outwards from the battery (a generator only where there is none). */
function findSupplyEntries(
  document: VehicleDocument,
  nets: readonly Net[],
): ReadonlyMap<Net, readonly string[]> {
  const components = new Map(document.components.map((component) => [component.id, component]));
  const isGround = (net: Net) => [...net.ends.values()].some((end) => end.kind === "ground");
  const kindOf = (end: End) => components.get(end.owner)?.kind;
  const postsOf = (kind: Component["kind"], terminal: string) => (net: Net) =>
    [...net.ends.values()].filter((end) => kindOf(end) === kind && end.terminal === terminal);
  const batteryPosts = postsOf("battery", "+");
  const hasBattery = nets.some((net) => batteryPosts(net).length > 0);
  const isUnfed = (end: End) => end.kind === "bar";
  const barsOf = (net: Net) => [...net.ends.values()].filter(isUnfed);
  const hasBars = nets.some((net) => barsOf(net).length > 0);
  const plain = hasBattery ? batteryPosts : hasBars ? () => [] : postsOf("chargingSource", "B+");
  const posts = (net: Net) => [...plain(net), ...barsOf(net)];
  const entries = new Map<Net, string[]>();
  let front = nets.filter((net) => !isGround(net) && posts(net).length > 0);
  for (const net of front) {
    entries.set(
      net,
      posts(net).map((end) => end.joint),
    );
  }
  while (front.length > 0) {
    const found = new Map<Net, string[]>();
    for (const net of front) {
      for (const end of net.ends.values()) {
        const kind = end.kind === "terminal" ? kindOf(end) : undefined;
        if (kind === undefined || !passThrough.has(kind)) continue;
        for (const next of nets) {
          if (entries.has(next) || isGround(next)) continue;
          const beyond = [...next.ends.values()].filter(
            (other) => other.owner === end.owner && isJoinedInside(components.get(end.owner), end, other),
          );
          if (beyond.length > 0) {
            found.set(next, [...(found.get(next) ?? []), ...beyond.map((other) => other.joint)]);
          }
        }
      }
    }
    for (const [net, joints] of found) entries.set(net, joints);
    front = [...found.keys()];
  }
  return entries;
}

/** A relay's coil and contact are two circuits; a filament is fed at its own leg and ends at the common one. */
function isJoinedInside(component: Component | undefined, entry: End, exit: End): boolean {
  if (component?.kind === "relay") {
    const { coilPlus, coilMinus } = relayTerminals(component);
    const isCoil = (end: End) => end.terminal === coilPlus || end.terminal === coilMinus;
    return isCoil(entry) === isCoil(exit);
  }
  return component?.kind !== "twoFilamentLamp" || exit.terminal === component.terminals.common;
}

/** Joints a signal starts from: the control modules on it, else whatever comes first in the document. */
function signalSources(net: Net, components: ReadonlyMap<string, Component>): readonly string[] {
  const terminals = [...net.ends.values()].filter((end) => end.kind === "terminal");
  const modules = terminals.filter((end) => components.get(end.owner)?.kind === "module");
  const splices = [...net.ends.values()].some((end) => end.kind === "splice");
  const chosen = modules.length > 0 ? (splices ? modules : modules.slice(0, 1)) : terminals.slice(0, 1);
  return chosen.map((end) => end.joint);
}

/**
 * Decides which way every conductor runs down the sheet: away from the supply, towards the ground, and for signals
 * away from the control modules. Distances are counted in conductors within one net.
 */
export function directConductors(
  document: VehicleDocument,
  conductors: readonly ResolvedConductor[],
): readonly DirectedConductor[] {
  const components = new Map(document.components.map((component) => [component.id, component]));
  const nets = splitIntoNets(conductors);
  const supply = findSupplyEntries(document, nets);
  const upper = new Map<string, End>();
  for (const net of nets) {
    const grounds = [...net.ends.values()].filter((end) => end.kind === "ground").map((end) => end.joint);
    const entry = supply.get(net);
    const isGround = grounds.length > 0;
    const roots = isGround ? grounds : (entry ?? signalSources(net, components));
    const distance = new Map(roots.map((joint) => [joint, 0]));
    for (const [joint, steps] of distance) {
      for (const { from, to } of net.conductors) {
        const other = from.joint === joint ? to.joint : to.joint === joint ? from.joint : undefined;
        if (other !== undefined && !distance.has(other)) distance.set(other, steps + 1);
      }
    }
    for (const conductor of net.conductors) {
      const { from, to } = conductor;
      const difference = (distance.get(from.joint) ?? 0) - (distance.get(to.joint) ?? 0);
      const fromIsNearer = difference === 0 ? from.joint < to.joint : difference < 0;
      upper.set(conductor.id, fromIsNearer !== isGround ? from : to);
    }
  }
  straightenInlineCavities(conductors, upper);
  return conductors.map((conductor) => {
    const above = upper.get(conductor.id) ?? conductor.from;
    return {
      id: conductor.id,
      upper: above,
      lower: above === conductor.from ? conductor.to : conductor.from,
    };
  });
}

/** Current comes into an in-line cavity on one face and leaves on the other: turns the second conductor where both agree. */
function straightenInlineCavities(conductors: readonly ResolvedConductor[], upper: Map<string, End>): void {
  const first = new Map<string, boolean>();
  const shared = sharedFaces(conductors.flatMap(({ from, to }) => [from, to]));
  for (const conductor of conductors) {
    for (const end of [conductor.from, conductor.to]) {
      if (end.kind !== "inline" || shared.has(faceKey(end))) continue;
      const isUpper = upper.get(conductor.id) === end;
      if (first.get(end.joint) === isUpper) {
        upper.set(conductor.id, conductor.from === upper.get(conductor.id) ? conductor.to : conductor.from);
      } else first.set(end.joint, isUpper);
    }
  }
}

export const faceKey = (end: End): string => `${end.joint}:${end.face ?? "h"}`;

/** Faces of in-line cavities that two or more conductors are crimped into. */
export function sharedFaces(ends: readonly End[]): ReadonlySet<string> {
  const count = new Map<string, number>();
  for (const end of ends) {
    if (end.kind === "inline") count.set(faceKey(end), (count.get(faceKey(end)) ?? 0) + 1);
  }
  return new Set([...count].filter(([, conductors]) => conductors > 1).map(([key]) => key));
}
