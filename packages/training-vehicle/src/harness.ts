import type { Conductor, Connector, VehicleDocument } from "@probeworthy/vehicle";

/** One part of the vehicle: what it adds to each list of the document. */
export interface HarnessPart {
  readonly components?: VehicleDocument["components"];
  readonly connectors?: Connector[];
  readonly conductors?: Conductor[];
  readonly splices?: VehicleDocument["splices"];
  readonly groundPoints?: VehicleDocument["groundPoints"];
}

/** `wire("W22", "F11:2", "X31.1", "VTYE", 0.75, 0.6)`: 0.6 m of 0.75 mm², violet with a yellow stripe. */
export const wire = (
  id: string,
  from: string,
  to: string,
  colour: string,
  squareMillimetres: number,
  metres: number,
): Conductor => ({ id, from, to, colour, squareMillimetres, metres });

/** Both wires of a CAN pair: high first, low second, equally long by construction. */
export const busPair = (
  ids: readonly [string, string],
  from: readonly [string, string],
  to: readonly [string, string],
  metres: number,
): Conductor[] => [
  { ...wire(ids[0], from[0], to[0], "BUPK", 0.35, metres), twistedPair: "CAN" },
  { ...wire(ids[1], from[1], to[1], "BU", 0.35, metres), twistedPair: "CAN" },
];

/** Cavities of a connector in order; an empty string is a cavity without a terminal. */
export const cavities = (terminals: readonly string[]): Connector["cavities"] =>
  terminals.map((terminal, index) =>
    terminal === "" ? { cavity: String(index + 1) } : { cavity: String(index + 1), terminal },
  );
