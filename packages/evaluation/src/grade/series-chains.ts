import type { VehicleDocument } from "@probeworthy/vehicle";

/**
 * Conductors and contacts in one unbranched line: an added resistance or an open anywhere in it gives the same voltages
 * and currents everywhere but at the joints inside the line. Where no reading was taken at those joints, one of them
 * stands for all, and candidates need not be simulated one by one.
 */
export function seriesChains(
  document: VehicleDocument,
  probed: ReadonlySet<string>,
): (place: string) => string {
  const elements = seriesElements(document);
  const atNode = new Map<string, string[]>();
  for (const { place, ends } of elements) {
    for (const end of ends) atNode.set(end, [...(atNode.get(end) ?? []), place]);
  }
  const leader = new Map(elements.map(({ place }) => [place, place]));
  const find = (place: string): string => {
    const above = leader.get(place) ?? place;
    return above === place ? place : find(above);
  };
  for (const [node, places] of atNode) {
    const [one, other] = places;
    const joint = isJoint(node) && places.length === 2 && !probed.has(node);
    if (!joint || one === undefined || other === undefined) continue;
    const [first, second] = [find(one), find(other)].sort();
    if (first !== undefined && second !== undefined) leader.set(second, first);
  }
  return find;
}

interface SeriesElement {
  readonly place: string;
  readonly ends: readonly string[];
}

function seriesElements(document: VehicleDocument): SeriesElement[] {
  return [
    ...document.conductors.map(({ id, from, to }) => ({ place: id, ends: [from, to] })),
    ...document.connectors.flatMap(({ id, component, cavities }) =>
      cavities.flatMap(({ cavity, terminal }) => {
        const place = `${id}.${cavity}`;
        if (component === undefined) return [{ place, ends: [place, `${place}/b`] }];
        return terminal === undefined ? [] : [{ place, ends: [place, `${component}:${terminal}`] }];
      }),
    ),
    ...document.groundPoints.map(({ id }) => ({ place: id, ends: [id, "body"] })),
  ];
}

/** Cavity faces, splices and rings; component terminals and the body have an inside or a branch of their own. */
const isJoint = (node: string): boolean => node !== "body" && !node.includes(":");
