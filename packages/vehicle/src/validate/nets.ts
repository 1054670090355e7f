import type { VehicleDocument } from "../document/vehicle-document";
import { endToPoint, type VehicleIndex } from "../document/vehicle-index";
import { nodeOf, parsePoint } from "../points/point-ids";

/** A conductor, contact or switch path between two nodes. */
export interface Link {
  readonly a: string;
  readonly b: string;
  /** Position in `conductors` when this link is a conductor. */
  readonly conductor?: number;
}

/** What a walk may pass besides conductors and mated contacts. */
export interface Passage {
  readonly switches: boolean;
}

/** Copper links of a document: everything that joins two nodes without being a load or a fuse. */
export function copperLinks(document: VehicleDocument, index: VehicleIndex, passage: Passage): Link[] {
  const node = (point: string): string => {
    const parsed = parsePoint(point, index);
    return parsed ? nodeOf(parsed, index) : point;
  };
  const links: Link[] = document.conductors.map((conductor, position) => ({
    a: node(endToPoint(conductor.from, index.groundPoints)),
    b: node(endToPoint(conductor.to, index.groundPoints)),
    conductor: position,
  }));
  for (const connector of document.connectors)
    for (const { cavity, terminal } of connector.cavities) {
      const place = `${connector.id}.${cavity}`;
      if (connector.component === undefined) links.push({ a: `${place}:h`, b: `${place}:b` });
      else if (terminal !== undefined)
        links.push({ a: `${place}:h`, b: `${connector.component}:${terminal}` });
    }
  for (const point of document.groundPoints) links.push({ a: `${point.id}:ring`, b: "body" });
  for (const component of document.components)
    if (component.kind === "module")
      for (const { from, to } of component.internalLinks ?? [])
        links.push({ a: `${component.id}:${from}`, b: `${component.id}:${to}` });
  if (passage.switches)
    for (const component of document.components) {
      if (component.kind === "switch")
        for (const pairs of Object.values(component.positions))
          for (const [a, b] of pairs) links.push({ a: `${component.id}:${a}`, b: `${component.id}:${b}` });
      if (component.kind === "diode") links.push({ a: `${component.id}:1`, b: `${component.id}:2` });
    }
  return links;
}

/** Everything reached from a node over links: the nodes, and the positions of the conductors passed. */
export function reach(
  from: string,
  links: readonly Link[],
): { readonly nodes: ReadonlySet<string>; readonly conductors: ReadonlySet<number> } {
  const nodes = new Set([from]);
  const conductors = new Set<number>();
  const waiting = [from];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    for (const { a, b, conductor } of links) {
      if (a !== node && b !== node) continue;
      if (conductor !== undefined) conductors.add(conductor);
      const other = a === node ? b : a;
      // Body metal is one large ground: what hangs on it is not part of the feed.
      if (nodes.has(other)) continue;
      nodes.add(other);
      if (other !== "body") waiting.push(other);
    }
  }
  return { nodes, conductors };
}
