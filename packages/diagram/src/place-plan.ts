import type { VehicleDocument, Zone } from "@probeworthy/vehicle";
import type { Box, Position } from "./geometry";
import { textWidth } from "./text-size";

export type PlanItemKind = "component" | "connector" | "splice" | "ground";

/** A labelled mark: a dot and its designator. `box` covers both. */
export interface PlanMark extends Position {
  readonly id: string;
  readonly kind: PlanItemKind;
  readonly title: string;
  readonly place?: string;
  readonly label: Position;
  readonly box: Box;
}

export interface PlanField extends Box {
  readonly zone: Zone;
  readonly title: string;
  readonly marks: readonly PlanMark[];
}

export interface PlacePlan {
  readonly width: number;
  readonly height: number;
  /** Closed and open polylines of the car seen from above, front at the top. */
  readonly outline: readonly (readonly Position[])[];
  readonly fields: readonly PlanField[];
  /** What has no zone, in document order. */
  readonly unplaced: readonly { readonly id: string; readonly kind: PlanItemKind; readonly title: string }[];
}

/** Rows of fields from front to rear; widths are shares of the row. */
const rows: readonly (readonly (readonly [Zone, string])[])[] = [
  [
    ["wheelFrontLeft", "Wheel, front left"],
    ["engineBayFront", "Engine bay, front"],
    ["wheelFrontRight", "Wheel, front right"],
  ],
  [
    ["engineBayLeft", "Engine bay, left"],
    ["engine", "Engine"],
    ["engineBayRight", "Engine bay, right"],
  ],
  [
    ["bulkheadLeft", "Bulkhead, left"],
    ["bulkheadRight", "Bulkhead, right"],
  ],
  [
    ["dashLeft", "Dash, left"],
    ["column", "Steering column"],
    ["dashCentre", "Dash, centre"],
    ["dashRight", "Dash, right"],
  ],
  [
    ["doorLeft", "Door, left"],
    ["cabinFloor", "Cabin floor"],
    ["roof", "Roof"],
    ["doorRight", "Door, right"],
  ],
  [
    ["rearSeat", "Rear seat"],
    ["underbody", "Underbody"],
  ],
  [
    ["wheelRearLeft", "Wheel, rear left"],
    ["boot", "Boot"],
    ["wheelRearRight", "Wheel, rear right"],
  ],
  [
    ["tailLeft", "Tail, left"],
    ["tailCentre", "Tail, centre"],
    ["tailRight", "Tail, right"],
  ],
];

const margin = 40;
const planWidth = 1080;
const gap = 10;
const titleHeight = 24;
const markHeight = 22;
const dot = 5;

interface Item {
  readonly id: string;
  readonly kind: PlanItemKind;
  readonly title: string;
  readonly place?: string | undefined;
  readonly zone?: Zone | undefined;
}

function itemsOf(document: VehicleDocument): readonly Item[] {
  return [
    ...document.components.map((one): Item => ({ ...one, kind: "component" })),
    ...document.connectors.map((one): Item => ({ ...one, kind: "connector" })),
    ...document.splices.map((one): Item => ({ ...one, title: one.title ?? "Splice", kind: "splice" })),
    ...document.groundPoints.map((one): Item => ({ ...one, kind: "ground" })),
  ];
}

/** Marks in columns of equal width below a field's title; `height` is what they need. */
function spread(
  items: readonly Item[],
  x: number,
  y: number,
  width: number,
): { marks: readonly PlanMark[]; height: number } {
  const cell = Math.max(60, ...items.map(({ id }) => textWidth(id, "designator") + 2 * dot + 14));
  const columns = Math.max(1, Math.floor((width - 16) / cell));
  const marks = items.map((item, index): PlanMark => {
    const left = Math.round(x + 8 + (index % columns) * cell);
    const top = y + titleHeight + Math.floor(index / columns) * markHeight;
    const middle = top + markHeight / 2;
    return {
      id: item.id,
      kind: item.kind,
      title: item.title,
      ...(item.place === undefined ? {} : { place: item.place }),
      x: left + dot + 2,
      y: middle,
      label: { x: left + 2 * dot + 7, y: middle + 5 },
      box: { x: left, y: top, width: cell - 4, height: markHeight - 2 },
    };
  });
  return { marks, height: titleHeight + Math.ceil(items.length / columns) * markHeight + 12 };
}

/**
 * The component-place plan: the car from above, front at the top, and in every field the components, connectors,
 * splices and ground points the document puts there, as labelled marks that never overlap. Lengths in px at zoom 1; a
 * row is as high as its fullest field.
 */
export function layoutPlacePlan(document: VehicleDocument): PlacePlan {
  const items = itemsOf(document);
  const inner = planWidth - 2 * margin - 80;
  const left = margin + 40;
  const fields: PlanField[] = [];
  let y = margin + 46;
  for (const row of rows) {
    const width = (inner - gap * (row.length - 1)) / row.length;
    const placed = row.map(([zone, title], index) => {
      const x = Math.round(left + index * (width + gap));
      return {
        zone,
        title,
        x,
        ...spread(
          items.filter((item) => item.zone === zone),
          x,
          y,
          width,
        ),
      };
    });
    const height = Math.max(72, ...placed.map((field) => field.height));
    for (const { zone, title, x, marks } of placed) {
      fields.push({ zone, title, x, y, width: Math.round(width), height, marks });
    }
    y += height + gap;
  }
  const height = y + margin + 36;
  return {
    width: planWidth,
    height,
    outline: outlineOf(planWidth, height, fields),
    fields,
    unplaced: items
      .filter((item) => item.zone === undefined)
      .map(({ id, kind, title }) => ({ id, kind, title })),
  };
}

/** Straight strokes only: body, windscreen, rear window, four wheels, two mirrors. */
function outlineOf(width: number, height: number, fields: readonly PlanField[]): PlacePlan["outline"] {
  const fieldOf = (zone: Zone) => fields.find((field) => field.zone === zone);
  const [left, right, top, foot] = [margin + 20, width - margin - 20, margin, height - margin];
  const body: readonly Position[] = [
    [left + 110, top],
    [right - 110, top],
    [right - 30, top + 34],
    [right, top + 110],
    [right, foot - 80],
    [right - 30, foot - 20],
    [right - 90, foot],
    [left + 90, foot],
    [left + 30, foot - 20],
    [left, foot - 80],
    [left, top + 110],
    [left + 30, top + 34],
    [left + 110, top],
  ].map(([x = 0, y = 0]) => ({ x, y }));
  const wheel = (field: PlanField | undefined, isLeft: boolean): readonly Position[] => {
    const y = field === undefined ? top : field.y + field.height / 2 - 36;
    const x = isLeft ? left - 22 : right + 2;
    return [
      [x, y],
      [x + 20, y],
      [x + 20, y + 72],
      [x, y + 72],
      [x, y],
    ].map(([px = 0, py = 0]) => ({ x: px, y: py }));
  };
  const mirrorY = fieldOf("dashLeft")?.y ?? top;
  const mirror = (isLeft: boolean): readonly Position[] => {
    const [x, out] = isLeft ? [left, -18] : [right, 18];
    return [
      { x, y: mirrorY },
      { x: x + out, y: mirrorY + 8 },
      { x: x + out, y: mirrorY + 26 },
      { x, y: mirrorY + 22 },
    ];
  };
  return [
    body,
    wheel(fieldOf("wheelFrontLeft"), true),
    wheel(fieldOf("wheelFrontRight"), false),
    wheel(fieldOf("wheelRearLeft"), true),
    wheel(fieldOf("wheelRearRight"), false),
    mirror(true),
    mirror(false),
  ];
}
