import { conductorEndPoints } from "../points/conductor-end-points";
import type { Component, ComponentOf } from "./component";
import type { Fault } from "./fault";
import { isPluggable, neighbours, sensorChannels } from "./part-facts";
import type { Connector, VehicleDocument } from "./vehicle-document";
import { createVehicleIndex, terminalsOf, type VehicleIndex } from "./vehicle-index";

/** A place where a fault of some kind can be put, as the fields of that fault, with words for a list. */
export interface FaultPlace {
  /** `at`, `component`, `connector` or `conductor`. */
  readonly place: string;
  /** Terminal, channel, output, scan value, filament or first cavity. */
  readonly part?: string;
  /** The other terminal, cavity or point of a fault between two. */
  readonly other?: string;
  readonly title: string;
}

/**
 * Every place in a document where a fault of this kind can be put, in document order: conductors, wired cavities and
 * ground points for opens and resistance; test points with copper on them for shorts; components and their terminals,
 * channels, outputs or values for the rest. Where a fault lies between two places, the second is the likely one: a
 * neighbouring cavity, the other wire of a pair, the body.
 */
export function listFaultPlaces(document: VehicleDocument, kind: Fault["kind"]): FaultPlace[] {
  const index = createVehicleIndex(document);
  const parts = <K extends Component["kind"]>(...kinds: K[]): ComponentOf<K>[] =>
    document.components.filter((part): part is ComponentOf<K> => (kinds as string[]).includes(part.kind));
  const whole = (list: readonly Component[]): FaultPlace[] =>
    list.map(({ id, title }) => ({ place: id, title: `${id} ${title}` }));
  const modules = parts("module");
  switch (kind) {
    case "open":
    case "seriesResistance":
    case "intermittent":
      return seriesPlaces(document, index);
    case "backedOut":
    case "spreadTerminal":
      return wiredCavities(document, index);
    case "shortToGround":
    case "shortToSupply":
      return conductorEndPoints(index).map((point) => ({ place: point, title: point }));
    case "shortBetween":
    case "leak":
      return neighbouringPoints(document, index);
    case "accessory":
      return document.components.flatMap((part) =>
        part.kind === "fuse"
          ? [{ place: `${part.id}:2`, other: "body", title: `behind ${part.id} ${part.title}` }]
          : [],
      );
    case "chafed":
      return document.conductors.map(({ id, from, to }) => ({
        place: id,
        title: `Conductor ${id}, ${from} to ${to}`,
      }));
    case "corroded":
    case "wetConnector":
      return document.connectors
        .filter((connector) => kind === "corroded" || neighbours(connector).length > 0)
        .map(({ id, title }) => ({ place: id, title: `${id} ${title}` }));
    case "crossedCavities":
      return document.connectors.flatMap((connector) =>
        neighbours(connector)
          .filter((pair) => pair.every((cavity) => index.conductorsAt.has(`${connector.id}.${cavity}:h`)))
          .map(([part, other]) => ({
            place: connector.id,
            part,
            other,
            title: `${connector.id} ${connector.title}, cavities ${part} and ${other}`,
          })),
      );
    case "fuseBlown":
    case "fuseMissing":
    case "fuseWrongRating":
      return whole(parts("fuse"));
    case "coilOpen":
    case "contactWelded":
    case "contactResistive":
      return whole(parts("relay"));
    case "diodeReversed":
      return whole(parts("relay").filter((relay) => isPluggable(relay) && relay.suppressor === "diode"));
    case "lampOpen":
      return parts("lamp", "ledLamp", "twoFilamentLamp").flatMap((lamp): FaultPlace[] =>
        lamp.kind === "twoFilamentLamp"
          ? (["first", "second"] as const).map((part) => ({
              place: lamp.id,
              part,
              title: `${lamp.id} ${lamp.title}, ${part} filament`,
            }))
          : whole([lamp]),
      );
    case "crossFilament":
      return whole(parts("twoFilamentLamp"));
    case "wrongBulb":
      return whole(parts("lamp"));
    case "sensorOffset":
    case "sensorStuck":
      return parts("torqueSensor", "positionSensor").flatMap((sensor) =>
        sensorChannels(sensor).map((part) => ({
          place: sensor.id,
          part,
          title: `${sensor.id} ${sensor.title}, output ${part}`,
        })),
      );
    case "sensorShift":
      return whole(parts("thermistor", "positionSensor"));
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
    case "internalShort":
      return parts(
        "torqueSensor",
        "positionSensor",
        "activeSpeedSensor",
        "passiveSpeedSensor",
        "motor",
        "relay",
      )
        .map((part) => ({ part, ...shortedTerminals(part) }))
        .map(({ part, terminal, other }) => ({
          place: part.id,
          part: terminal,
          other,
          title: `${part.id} ${part.title}, ${terminal} to ${other}`,
        }));
    case "motorHot":
      return whole(parts("motor").filter(({ heat }) => heat !== undefined));
    case "motorWorn":
    case "motorShorted":
      return whole(parts("motor"));
    case "motorSeized":
      return whole(parts("motor").filter(({ turning }) => turning !== undefined));
    case "couplingBroken":
      return whole(parts("motor").filter(({ gear }) => gear !== undefined));
    case "weakBattery":
      return whole(parts("battery"));
    case "beltSlips":
    case "alternatorDiodeOpen":
    case "regulatorOff":
      return whole(parts("chargingSource"));
    case "driverDead":
    case "driverLeaking":
      return modules.flatMap((module) => named(module, module.outputs ?? [], "output"));
    case "scanValueWrong":
    case "scanValueStuck":
      return modules.flatMap((module) => named(module, module.scanValues ?? [], "scan value"));
    case "silentNode":
      return whole(modules.filter(({ bus, lin }) => bus !== undefined || lin !== undefined));
    case "staysAwake":
      return whole(modules.filter(({ supply }) => supply.sleep !== undefined));
    case "terminatorMissing":
    case "terminatorDrifted":
      return whole([
        ...modules.filter(({ bus }) => bus?.terminationOhms !== undefined),
        ...parts("resistor").filter(({ form }) => form === "terminator"),
      ]);
    case "terminatorExtra":
      return modules.flatMap(({ id, title, bus }) =>
        bus
          ? [{ place: `${id}:${bus.canHigh}`, other: `${id}:${bus.canLow}`, title: `at ${id} ${title}` }]
          : [],
      );
  }
}

const named = (
  { id, title }: ComponentOf<"module">,
  list: readonly { readonly name: string }[],
  word: string,
): FaultPlace[] =>
  list.map(({ name }) => ({ place: id, part: name, title: `${id} ${title}, ${word} ${name}` }));

/** Supply and ground of a sensor, both ends of a winding or coil: what joins when a part fails inside. */
function shortedTerminals(
  part: ComponentOf<
    "torqueSensor" | "positionSensor" | "activeSpeedSensor" | "passiveSpeedSensor" | "motor" | "relay"
  >,
): { terminal: string; other: string } {
  if (part.kind === "torqueSensor") return { terminal: part.terminals.supply, other: part.terminals.ground };
  const [first = "", second = ""] =
    part.kind === "positionSensor" ? [part.tracks[0]?.supply, part.tracks[0]?.ground] : terminalsOf(part);
  return { terminal: first, other: second };
}

function wiredCavities(document: VehicleDocument, index: VehicleIndex): FaultPlace[] {
  return document.connectors.flatMap(({ id, cavities: list }) =>
    list
      .filter(({ cavity }) => index.conductorsAt.has(`${id}.${cavity}:h`))
      .map(({ cavity }) => ({ place: `${id}.${cavity}`, title: `Contact of ${id} cavity ${cavity}` })),
  );
}

function seriesPlaces(document: VehicleDocument, index: VehicleIndex): FaultPlace[] {
  return [
    ...document.conductors.map(({ id, from, to }) => ({
      place: id,
      title: `Conductor ${id}, ${from} to ${to}`,
    })),
    ...wiredCavities(document, index),
    ...document.groundPoints.map(({ id, title }) => ({ place: id, title: `Ground point ${id}, ${title}` })),
  ];
}

/** Wired cavities side by side, and the two wires of a twisted pair. */
function neighbouringPoints(document: VehicleDocument, index: VehicleIndex): FaultPlace[] {
  const wired = (connector: Connector, cavity: string): boolean =>
    index.conductorsAt.has(`${connector.id}.${cavity}:h`);
  return document.connectors.flatMap((connector) =>
    neighbours(connector)
      .filter(([a, b]) => wired(connector, a) && wired(connector, b))
      .map(([a, b]) => ({
        place: `${connector.id}.${a}:h`,
        other: `${connector.id}.${b}:h`,
        title: `${connector.id} ${connector.title}, between cavities ${a} and ${b}`,
      })),
  );
}
