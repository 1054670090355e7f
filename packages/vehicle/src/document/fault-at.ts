import { type Fault, faultSchema } from "./fault";
import { faultTable } from "./fault-table";
import type { FaultPlace } from "./list-fault-places";

/** Fields of a fault that take the parts of a listed place. */
interface PlaceFields {
  readonly place: string;
  readonly part?: string;
  readonly other?: string;
}

const inside = (part?: string, other?: string): PlaceFields => ({
  place: "component",
  ...(part === undefined ? {} : { part }),
  ...(other === undefined ? {} : { other }),
});

function fieldsOf(kind: Fault["kind"]): PlaceFields {
  switch (kind) {
    case "open":
    case "seriesResistance":
    case "intermittent":
    case "backedOut":
    case "spreadTerminal":
    case "shortToGround":
    case "shortToSupply":
      return { place: "at" };
    case "shortBetween":
    case "leak":
    case "accessory":
    case "terminatorExtra":
      return { place: "at", other: "other" };
    case "chafed":
      return { place: "conductor" };
    case "corroded":
    case "wetConnector":
      return { place: "connector" };
    case "crossedCavities":
      return { place: "connector", part: "first", other: "second" };
    case "sensorOffset":
    case "sensorStuck":
      return inside("channel");
    case "internalOpen":
      return inside("terminal");
    case "internalShort":
      return inside("terminal", "other");
    case "lampOpen":
      return inside("filament");
    case "driverDead":
    case "driverLeaking":
      return inside("output");
    case "scanValueWrong":
    case "scanValueStuck":
      return inside("value");
    default:
      return inside();
  }
}

/**
 * A fault of this kind at a place of `listFaultPlaces`, so bad as `amount` says in the field of its severity scale (the
 * middle of the scale without it). `more` fills in what a place does not say: the supply of a short, the condition of an
 * intermittent contact, the battery's resistance. Throws a zod error when something is still missing.
 */
export function faultAt(
  kind: Fault["kind"],
  place: FaultPlace,
  amount?: number,
  more: Readonly<Record<string, string | number>> = {},
): Fault {
  const fields = fieldsOf(kind);
  const { severity } = faultTable[kind];
  return faultSchema.parse({
    kind,
    [fields.place]: place.place,
    ...(fields.part === undefined || place.part === undefined ? {} : { [fields.part]: place.part }),
    ...(fields.other === undefined || place.other === undefined ? {} : { [fields.other]: place.other }),
    ...(severity ? { [severity.field]: amount ?? middleOf(severity) } : {}),
    ...(kind === "chafed" ? { along: 0.5 } : {}),
    ...more,
  });
}

/** The middle of a severity scale: by decades where it spans them. */
export function middleOf({
  minimum,
  maximum,
  scale,
}: NonNullable<(typeof faultTable)[Fault["kind"]]["severity"]>): number {
  return scale === "log" ? Math.sqrt(minimum * maximum) : (minimum + maximum) / 2;
}
