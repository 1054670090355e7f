import type { Connector, VehicleDocument } from "@probeworthy/vehicle";
import { splitColour } from "./colours";
import type { Box } from "./geometry";

/** Seen from where the conductors enter, or from the mating side, which mirrors left and right. */
export type FaceView = "wire" | "terminal";

export interface FaceCavity extends Box {
  readonly cavity: string;
  readonly row: number;
  readonly column: number;
  readonly terminal?: string;
  readonly conductor?: string;
  readonly colour?: readonly [string] | readonly [string, string];
  /** Conductor of the second wired face of an in-line connector. */
  readonly secondConductor?: string;
  /** Neither a conductor nor a component terminal belongs here. */
  readonly empty: boolean;
  readonly harnessPoint: string;
  readonly facingPoint: string;
}

export interface ConnectorFace {
  readonly connector: string;
  readonly title: string;
  readonly housing?: string;
  readonly place?: string;
  readonly view: FaceView;
  readonly inline: boolean;
  readonly rows: number;
  readonly columns: number;
  readonly width: number;
  readonly height: number;
  readonly cavities: readonly FaceCavity[];
}

const cell = 44;
const gap = 8;
const wall = 14;

/** A numbered cavity stands at its number, row by row; where some are lettered, all stand in the document's order. */
function cavityPositions({ cavities }: Connector): ReadonlyMap<number, Connector["cavities"][number]> {
  const isNumbered = cavities.every(({ cavity }) => /^[1-9][0-9]*$/.test(cavity));
  return new Map(
    cavities.map((listed, index) => [isNumbered ? Number(listed.cavity) - 1 : index, listed] as const),
  );
}

/**
 * Geometry of a connector face, px. Cavities stand row by row from the upper left of the wire side; positions the
 * document does not list are marked empty.
 * Undefined when the document has no such connector.
 */
export function connectorFace(
  document: VehicleDocument,
  connectorId: string,
  view: FaceView,
): ConnectorFace | undefined {
  const connector = document.connectors.find((candidate) => candidate.id === connectorId);
  if (connector === undefined) return undefined;
  const inline = connector.component === undefined;
  const conductorAt = (end: string) =>
    document.conductors.find((conductor) => conductor.from === end || conductor.to === end);
  const positions = cavityPositions(connector);
  const rows = Math.max(connector.rows, Math.ceil((Math.max(...positions.keys()) + 1) / connector.columns));

  const cavities = Array.from({ length: rows * connector.columns }, (_, index): FaceCavity => {
    const row = Math.floor(index / connector.columns);
    const fromLeft = index % connector.columns;
    const column = view === "wire" ? fromLeft : connector.columns - 1 - fromLeft;
    const listed = positions.get(index);
    const cavity = listed?.cavity ?? String(index + 1);
    const conductor = conductorAt(`${connectorId}.${cavity}`);
    const second = inline ? conductorAt(`${connectorId}.${cavity}/b`) : undefined;
    return {
      cavity,
      row,
      column,
      x: wall + column * (cell + gap),
      y: wall + row * (cell + gap),
      width: cell,
      height: cell,
      ...(listed?.terminal === undefined ? {} : { terminal: listed.terminal }),
      ...(conductor === undefined ? {} : { conductor: conductor.id, colour: splitColour(conductor.colour) }),
      ...(second === undefined ? {} : { secondConductor: second.id }),
      empty: conductor === undefined && second === undefined && listed?.terminal === undefined,
      harnessPoint: `${connectorId}.${cavity}:h`,
      facingPoint: `${connectorId}.${cavity}:${inline ? "b" : "c"}`,
    };
  });

  return {
    connector: connectorId,
    title: connector.title,
    ...(connector.housing === undefined ? {} : { housing: connector.housing }),
    ...(connector.place === undefined ? {} : { place: connector.place }),
    view,
    inline,
    rows,
    columns: connector.columns,
    width: 2 * wall + connector.columns * cell + (connector.columns - 1) * gap,
    height: 2 * wall + rows * cell + (rows - 1) * gap,
    cavities,
  };
}
