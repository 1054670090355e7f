import type { Box, ConductorLabel, Position, Sheet, SheetConductor, TextAnchor } from "../geometry";
import { boxesOverlap, labelBox, segmentEntersBox, segmentsOf, symbolTextBoxes } from "../quality";
import { textWidth } from "../text-size";

/** Distance of a label from its conductor, px. */
const clearance = 6;
/** A conductor longer than this is labelled near both ends, px. */
const longConductor = 420;

const grown = (box: Box, by: number): Box => ({
  x: box.x - by,
  y: box.y - by,
  width: box.width + 2 * by,
  height: box.height + 2 * by,
});

function fixedObstacles(sheet: Sheet): Box[] {
  const connectors = sheet.connectors.flatMap((connector): Box[] => {
    const ys = connector.cavities.flatMap((cavity) => [cavity.harness.y, cavity.facing.y]);
    const top = Math.min(...ys) - 12;
    return [
      {
        x: connector.from.x - 36,
        y: top,
        width: connector.to.x - connector.from.x + 40,
        height: Math.max(...ys) + 12 - top,
      },
    ];
  });
  const points = sheet.testPoints.map(({ x, y }): Box => ({ x: x - 13, y: y - 13, width: 26, height: 26 }));
  return [...sheet.symbols, ...symbolTextBoxes(sheet).map(({ box }) => box), ...connectors, ...points];
}

/** Candidate places beside the vertical runs and along the horizontal ones, the longest run first. */
function candidates(conductor: SheetConductor, lines: readonly string[]): readonly ConductorLabel[] {
  const height = lines.length * 13;
  const width = Math.max(...lines.map((each) => textWidth(each, "cavity")));
  const runs = segmentsOf(conductor.points).map((segment) => ({
    ...segment,
    isVertical: segment.a.x === segment.b.x,
    length: Math.abs(segment.a.x - segment.b.x) + Math.abs(segment.a.y - segment.b.y),
  }));
  const label = (x: number, y: number, anchor: TextAnchor): ConductorLabel => ({
    x: Math.round(x),
    y: Math.round(y),
    anchor,
    lines,
  });
  const verticals = runs.filter((run) => run.isVertical && run.length >= height);
  const horizontals = runs.filter((run) => !run.isVertical && run.length >= width);
  const found: ConductorLabel[] = [];
  for (const { a, b, length } of verticals) {
    const top = Math.min(a.y, b.y);
    for (let offset = Math.min(8, length - height); offset + height <= length; offset += 4) {
      found.push(label(a.x + clearance, top + 10 + offset, "start"));
      found.push(label(a.x - clearance, top + 10 + offset, "end"));
    }
  }
  for (const { a, b } of horizontals) {
    const left = Math.min(a.x, b.x);
    const right = Math.max(a.x, b.x);
    for (let x = left; x + width <= right; x += 8) {
      found.push(label(x, a.y + 15, "start"));
      if (lines.length === 1) found.push(label(x, a.y - 7, "start"));
    }
  }
  return found;
}

const distanceTo = (label: ConductorLabel, place: Position) =>
  Math.abs(label.x - place.x) + Math.abs(label.y - place.y);

/** Places every conductor's label where it covers nothing; colour code alone where there is no room for all of it. */
export function placeLabels(sheet: Sheet): Sheet {
  const taken = fixedObstacles(sheet);
  const segments = [...sheet.conductors, ...sheet.links].flatMap((each) => segmentsOf(each.points));
  const isFree = (label: ConductorLabel) => {
    const box = grown(labelBox(label), 2);
    return (
      !taken.some((other) => boxesOverlap(box, other)) &&
      !segments.some((segment) => segmentEntersBox(segment, box))
    );
  };
  const conductors = sheet.conductors.map((conductor) => {
    const code = conductor.colour.join("");
    const size = String(conductor.squareMillimetres);
    const length = segmentsOf(conductor.points).reduce(
      (sum, { a, b }) => sum + Math.abs(a.x - b.x) + Math.abs(a.y - b.y),
      0,
    );
    const first = conductor.points[0] as Position;
    const last = conductor.points.at(-1) as Position;
    const anchors = length > longConductor ? [first, last] : [first];
    const labels: ConductorLabel[] = [];
    for (const place of anchors) {
      for (const lines of [[code, size, conductor.id], [code, size], [code]]) {
        const best = candidates(conductor, lines)
          .map((label) => ({ label, distance: distanceTo(label, place) }))
          .filter(({ distance }) => distance < Math.max(160, length * 0.6))
          .sort((one, other) => one.distance - other.distance)
          .find(({ label }) => isFree(label))?.label;
        if (best === undefined) continue;
        labels.push(best);
        taken.push(labelBox(best));
        break;
      }
    }
    return { ...conductor, labels };
  });
  return { ...sheet, conductors };
}
