import type { VehicleDocument } from "@probeworthy/vehicle";

export interface Place {
  readonly id: string;
  readonly title: string;
  readonly group: string;
}

/** Every place a report may name, in the order of the document: conductors, contacts, connectors, grounds, parts. */
export function reportPlaces(document: VehicleDocument): readonly Place[] {
  const fuses = document.components.filter((part) => part.kind === "fuse");
  const parts = document.components.filter((part) => part.kind !== "fuse");
  const titled = (group: string) => (thing: { id: string; title?: string | undefined }) => ({
    id: thing.id,
    title: thing.title === undefined ? thing.id : `${thing.id} ${thing.title}`,
    group,
  });
  return [
    ...fuses.map(titled("Fuses")),
    ...document.conductors.map((wire) => ({
      id: wire.id,
      title: `${wire.id} ${wire.colour}, ${wire.from} to ${wire.to}`,
      group: "Conductors",
    })),
    ...document.groundPoints.map(titled("Ground points")),
    ...document.connectors.flatMap((connector) =>
      connector.cavities.map(({ cavity }) => ({
        id: `${connector.id}.${cavity}`,
        title: `${connector.id} cavity ${cavity}`,
        group: "Terminals in connectors",
      })),
    ),
    ...document.connectors.map(titled("Connectors")),
    ...document.splices.map(titled("Splices")),
    ...parts.map(titled("Components")),
  ];
}
