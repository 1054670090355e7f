import { conductorEndPoints } from "../points/conductor-end-points";
import type { Component } from "./component";
import type { Fault } from "./fault";
import type { VehicleDocument } from "./vehicle-document";
import { createVehicleIndex, terminalsOf } from "./vehicle-index";

/** A place where a fault of some kind can be put, as the fields of that fault, with words for a list. */
export interface FaultPlace {
  /** `at`, or `component`. */
  readonly place: string;
  /** Terminal of an internal open, channel of a sensor fault. */
  readonly part?: string;
  readonly title: string;
}

const ofKind = (document: VehicleDocument, kind: Component["kind"]): FaultPlace[] =>
  document.components
    .filter((component) => component.kind === kind)
    .map(({ id, title }) => ({ place: id, title: `${id} ${title}` }));

/**
 * Every place in a document where a fault of this kind can be put, in document order: conductors, wired cavities and
 * ground points for opens and resistance; test points with copper on them for shorts; components and their terminals or
 * channels for the rest.
 */
export function listFaultPlaces(document: VehicleDocument, kind: Fault["kind"]): FaultPlace[] {
  switch (kind) {
    case "open":
    case "seriesResistance":
      return seriesPlaces(document);
    case "shortToGround":
    case "shortToSupply":
    case "shortBetween":
      return conductorEndPoints(createVehicleIndex(document)).map((point) => ({
        place: point,
        title: point,
      }));
    case "fuseBlown":
      return ofKind(document, "fuse");
    case "motorHot":
      return ofKind(document, "motor");
    case "weakBattery":
      return ofKind(document, "battery");
    case "sensorOffset":
    case "sensorStuck":
      return document.components.flatMap((component) =>
        component.kind === "torqueSensor"
          ? [component.terminals.signal1, component.terminals.signal2].map((part) => ({
              place: component.id,
              part,
              title: `${component.id} ${component.title}, output ${part}`,
            }))
          : [],
      );
    case "internalOpen":
      return document.components
        .filter(({ kind: found }) => found !== "passive")
        .flatMap((component) =>
          terminalsOf(component).map((part) => ({
            place: component.id,
            part,
            title: `${component.id} ${component.title}, terminal ${part}`,
          })),
        );
  }
}

function seriesPlaces(document: VehicleDocument): FaultPlace[] {
  const index = createVehicleIndex(document);
  const cavities = document.connectors.flatMap(({ id, cavities: list }) =>
    list
      .filter(({ cavity }) => index.conductorsAt.has(`${id}.${cavity}:h`))
      .map(({ cavity }) => ({ place: `${id}.${cavity}`, title: `Contact of ${id} cavity ${cavity}` })),
  );
  return [
    ...document.conductors.map(({ id, from, to }) => ({
      place: id,
      title: `Conductor ${id}, ${from} to ${to}`,
    })),
    ...cavities,
    ...document.groundPoints.map(({ id, title }) => ({ place: id, title: `Ground point ${id}, ${title}` })),
  ];
}
