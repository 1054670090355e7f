import type { Box, ConductorLabel, Position, Primitive, Sheet } from "./geometry";
import { textWidth } from "./text-size";

interface Segment {
  readonly a: Position;
  readonly b: Position;
}

const lineHeight = 13;

/** The box a conductor's label covers, px. */
export function labelBox(label: ConductorLabel): Box {
  const width = Math.max(...label.lines.map((line) => textWidth(line, "cavity")));
  const x =
    label.anchor === "start" ? label.x : label.anchor === "end" ? label.x - width : label.x - width / 2;
  return { x, y: label.y - 10, width, height: label.lines.length * lineHeight };
}

/** The straight pieces of a polyline. */
export function segmentsOf(points: readonly Position[]): readonly Segment[] {
  return points.slice(1).map((b, index) => ({ a: points[index] as Position, b }));
}

/** True when the two boxes share more than their edges. */
export function boxesOverlap(one: Box, other: Box): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.height &&
    other.y < one.y + one.height
  );
}

/** True when a horizontal or vertical segment passes through the inside of a box. */
export function segmentEntersBox({ a, b }: Segment, box: Box): boolean {
  const left = Math.min(a.x, b.x);
  const right = Math.max(a.x, b.x);
  const top = Math.min(a.y, b.y);
  const bottom = Math.max(a.y, b.y);
  return left < box.x + box.width && right > box.x && top < box.y + box.height && bottom > box.y;
}

function segmentsCross(one: Segment, other: Segment): boolean {
  const horizontal = one.a.y === one.b.y ? one : other;
  const vertical = horizontal === one ? other : one;
  if (horizontal.a.y !== horizontal.b.y || vertical.a.x !== vertical.b.x) return false;
  const y = horizontal.a.y;
  const x = vertical.a.x;
  return (
    x > Math.min(horizontal.a.x, horizontal.b.x) &&
    x < Math.max(horizontal.a.x, horizontal.b.x) &&
    y > Math.min(vertical.a.y, vertical.b.y) &&
    y < Math.max(vertical.a.y, vertical.b.y)
  );
}

/** How often two conductors cross on the sheet. */
export function countCrossings(sheet: Sheet): number {
  const lines = [...sheet.conductors, ...sheet.links].map((line) => segmentsOf(line.points));
  let crossings = 0;
  lines.forEach((one, index) => {
    for (const other of lines.slice(index + 1)) {
      for (const a of one) for (const b of other) if (segmentsCross(a, b)) crossings += 1;
    }
  });
  return crossings;
}

/** Every conductor that passes through the inside of a symbol, as `W12 through A1`. Should be empty. */
export function conductorsThroughSymbols(sheet: Sheet): readonly string[] {
  const references = (sheet.references ?? [])
    .filter((reference) => reference.conductor !== undefined)
    .map(({ id, box }) => ({ id, ...box }));
  return sheet.conductors.flatMap((conductor) =>
    [...sheet.symbols, ...references]
      .filter((symbol) => segmentsOf(conductor.points).some((segment) => segmentEntersBox(segment, symbol)))
      .map((symbol) => `${conductor.id} through ${symbol.id}`),
  );
}

/** Two conductors that lie on each other for some length cannot be told apart: `W1 on W2`. Should be empty. */
export function conductorsOnConductors(sheet: Sheet): readonly string[] {
  const found: string[] = [];
  sheet.conductors.forEach((one, index) => {
    for (const other of sheet.conductors.slice(index + 1)) {
      const onEachOther = segmentsOf(one.points).some((p) =>
        segmentsOf(other.points).some((q) => {
          const bothVertical = p.a.x === p.b.x && q.a.x === q.b.x && Math.abs(p.a.x - q.a.x) < 3;
          const bothHorizontal = p.a.y === p.b.y && q.a.y === q.b.y && Math.abs(p.a.y - q.a.y) < 3;
          const shared = (u: number, v: number, s: number, t: number) =>
            Math.min(Math.max(u, v), Math.max(s, t)) - Math.max(Math.min(u, v), Math.min(s, t));
          return (
            (bothVertical && shared(p.a.y, p.b.y, q.a.y, q.b.y) > 1) ||
            (bothHorizontal && shared(p.a.x, p.b.x, q.a.x, q.b.x) > 1)
          );
        }),
      );
      if (onEachOther) found.push(`${one.id} on ${other.id}`);
    }
  });
  return found;
}

/** Boxes of everything written on the sheet that belongs to a symbol, with the symbol's id. */
export function symbolTextBoxes(
  sheet: Pick<Sheet, "symbols" | "references">,
): readonly { id: string; box: Box }[] {
  const drawn: readonly { id: string; primitives: readonly Primitive[]; fitted?: readonly Primitive[] }[] = [
    ...sheet.symbols,
    ...(sheet.references ?? []),
  ];
  return drawn.flatMap((symbol) =>
    [...symbol.primitives, ...(symbol.fitted ?? [])].flatMap((primitive) => {
      if (primitive.kind !== "text") return [];
      const width = textWidth(primitive.text, primitive.role);
      const shift = primitive.anchor === "start" ? 0 : primitive.anchor === "end" ? width : width / 2;
      return [{ id: symbol.id, box: { x: primitive.x - shift, y: primitive.y - 10, width, height: 12 } }];
    }),
  );
}

/** Every pair of texts that cover each other, every text on a conductor, every conductor label on a symbol. Should be empty. */
export function overlappingLabels(sheet: Sheet): readonly string[] {
  const labels = sheet.conductors.flatMap((conductor) =>
    conductor.labels.map((label) => ({ id: conductor.id, box: labelBox(label) })),
  );
  const texts = [...labels, ...symbolTextBoxes(sheet)];
  const found: string[] = [];
  texts.forEach((one, index) => {
    for (const other of texts.slice(index + 1)) {
      if (boxesOverlap(one.box, other.box)) found.push(`${one.id} over ${other.id}`);
    }
  });
  for (const written of texts) {
    for (const conductor of sheet.conductors) {
      if (segmentsOf(conductor.points).some((segment) => segmentEntersBox(segment, written.box))) {
        found.push(`text of ${written.id} on ${conductor.id}`);
      }
    }
  }
  for (const label of labels) {
    for (const symbol of sheet.symbols) {
      if (boxesOverlap(label.box, symbol)) found.push(`label ${label.id} on ${symbol.id}`);
    }
  }
  return found;
}

/** Everything written that reaches beyond the frame of the sheet, by whose it is. Should be empty. */
export function textsOutside(sheet: Sheet): readonly string[] {
  const { frame } = sheet.zones;
  const labels = sheet.conductors.flatMap((conductor) =>
    conductor.labels.map((label) => ({ id: conductor.id, box: labelBox(label) })),
  );
  const names = sheet.connectors.map(({ id, label }) => {
    const width = textWidth(id, "terminal");
    const shift = label.anchor === "end" ? width : label.anchor === "middle" ? width / 2 : 0;
    return { id, box: { x: label.x - shift, y: label.y - 10, width, height: 12 } };
  });
  return [...labels, ...symbolTextBoxes(sheet), ...names]
    .filter(
      ({ box }) =>
        box.x < frame.x ||
        box.y < frame.y ||
        box.x + box.width > frame.x + frame.width ||
        box.y + box.height > frame.y + frame.height,
    )
    .map(({ id }) => id);
}
