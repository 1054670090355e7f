import { colourName, type Sheet, type SheetConductor, zoneOf } from "@probeworthy/diagram";
import type { Potentials } from "@/features/potentials/potentials-view";
import type { PlacedTarget } from "./nearest-target";
import { ampsText, voltsText } from "./potential-line";

/** What the diagram needs to know about a test point; `TestPoint` of the vehicle package fits. */
export interface PointState {
  readonly id: string;
  readonly title: string;
  readonly accessible: boolean;
  readonly reason?: string | undefined;
}

/** Anything on the sheet that can be pressed. */
export interface Target extends PlacedTarget {
  readonly kind: "point" | "connector" | "fuse" | "reference";
  readonly id: string;
  readonly name: string;
  readonly reason?: string;
  /** Half the size of a handle's box. */
  readonly half: { readonly x: number; readonly y: number };
}

export interface SheetState {
  readonly points: readonly PointState[];
  readonly unplugged: readonly string[];
  readonly pulledFuses: readonly string[];
}

const notInThisAttempt = "This place cannot be reached with a lead.";

/** The conductor at a test point, where the sheet shows one. */
export function conductorAt(sheet: Sheet, pointId: string): string | undefined {
  for (const { cavities } of sheet.connectors)
    for (const { harnessPoint, facingPoint, conductor } of cavities)
      if (harnessPoint === pointId || facingPoint === pointId) return conductor;
  return sheet.conductors.find(
    ({ from, to, pointOf }) => from === pointId || to === pointId || pointOf?.includes(pointId) === true,
  )?.id;
}

/** The targets of a sheet as the car stands now, in reading order. */
export function targetsOf(sheet: Sheet, state: SheetState): readonly Target[] {
  const apart = new Set([...state.unplugged, ...state.pulledFuses]);
  const known = new Map(state.points.map((point) => [point.id, point]));
  const points = sheet.testPoints
    .filter((point) => point.onlyWhenApart === undefined || apart.has(point.onlyWhenApart))
    .map((point): Target => {
      const facts = known.get(point.pointId);
      const reason = facts === undefined ? notInThisAttempt : facts.accessible ? undefined : facts.reason;
      const isClosed = facts === undefined || !facts.accessible;
      return {
        key: `point ${point.pointId}`,
        kind: "point",
        id: point.pointId,
        name: facts?.title ?? point.pointId,
        ...(isClosed ? { reason: reason ?? notInThisAttempt } : {}),
        x: point.x,
        y: point.y,
        half: { x: 13, y: 13 },
      };
    });
  const connectors = sheet.connectors.map((connector, index): Target => {
    const isApart = apart.has(connector.id);
    return {
      key: `connector ${connector.id} ${index}`,
      kind: "connector",
      id: connector.id,
      name: `${connector.id}, ${connector.title}: ${isApart ? "plug back" : "unplug"}`,
      x: connector.label.x - 15,
      y: connector.from.y,
      half: { x: 16, y: 12 },
    };
  });
  const fuses = sheet.symbols
    .filter((symbol) => symbol.kind === "fuse")
    .map((symbol): Target => {
      const isOut = apart.has(symbol.id);
      return {
        key: `fuse ${symbol.id}`,
        kind: "fuse",
        id: symbol.id,
        name: `${symbol.id}, ${symbol.title}: ${isOut ? "fit a fuse" : "pull the fuse"}`,
        x: symbol.x + symbol.width / 2 + (isOut ? 34 : 0),
        y: symbol.y + symbol.height / 2,
        half: { x: 12, y: 13 },
      };
    });
  const references = (sheet.references ?? []).map((reference): Target => {
    const { box, toDesignator, toTerminal, title } = reference;
    const end = toTerminal === undefined ? toDesignator : `${toDesignator} ${toTerminal}`;
    return {
      key: `reference ${reference.id}`,
      kind: "reference",
      id: reference.id,
      name: `Goes on at ${end}, sheet ${title}: open it`,
      x: box.x + box.width / 2,
      y: box.y + box.height / 2,
      half: { x: Math.max(12, box.width / 2), y: Math.max(12, box.height / 2) },
    };
  });
  return [...points, ...connectors, ...fuses, ...references].sort((a, b) => a.y - b.y || a.x - b.x);
}

/** What the name of a conductor says: `W12, YEBK (yellow with black stripe), 0.5 mm², zone C4`. */
export function conductorWords(
  sheet: Sheet,
  conductor: SheetConductor,
  potentials?: Potentials | undefined,
): string {
  const at = potentials?.conductors[conductor.id];
  if (at !== undefined) {
    return `${conductor.id}: ${voltsText(at.from)} at ${conductor.from}, ${voltsText(at.to)} at ${conductor.to}, ${ampsText(at.amps)}`;
  }
  const place = conductor.points[0];
  const zone = place === undefined ? "" : `, from zone ${zoneOf(sheet, place)}`;
  return `${conductor.id}, ${conductor.colour.join("")} (${colourName(conductor.colour)}), ${conductor.squareMillimetres} mm²${zone}`;
}
