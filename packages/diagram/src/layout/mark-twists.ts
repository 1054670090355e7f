import type { Box, Position, Sheet, SheetConductor, SheetTwist } from "../geometry";
import { boxesOverlap, labelBox, segmentsOf } from "../quality";
import { path } from "./symbols/pieces";

const height = 26;
/** Two conductors further apart than this are not drawn as a pair, px. */
const widest = 120;

function loop(left: number, right: number, y: number): string {
  const [from, to] = [left - 7, right + 7];
  const middle = (from + to) / 2;
  return `M ${from} ${y} C ${from} ${y - 9} ${middle} ${y - 9} ${middle} ${y} C ${middle} ${y + 9} ${to} ${y + 9} ${to} ${y} C ${to} ${y - 9} ${middle} ${y - 9} ${middle} ${y} C ${middle} ${y + 9} ${from} ${y + 9} ${from} ${y}`;
}

function markOf(
  sheet: Sheet,
  pair: string,
  one: SheetConductor,
  two: SheetConductor,
  taken: readonly Box[],
): SheetTwist | undefined {
  const uprights = (conductor: SheetConductor) =>
    segmentsOf(conductor.points).filter(({ a, b }) => a.x === b.x && Math.abs(a.y - b.y) > height);
  const others = sheet.conductors
    .filter((each) => each !== one && each !== two)
    .flatMap(({ points }) => segmentsOf(points));
  for (const p of uprights(one)) {
    for (const q of uprights(two)) {
      const [left, right] = [Math.min(p.a.x, q.a.x), Math.max(p.a.x, q.a.x)];
      if (right - left > widest) continue;
      const top = Math.max(Math.min(p.a.y, p.b.y), Math.min(q.a.y, q.b.y));
      const foot = Math.min(Math.max(p.a.y, p.b.y), Math.max(q.a.y, q.b.y));
      for (let y = top + height / 2; y <= foot - height / 2; y += 6) {
        const box: Box = { x: left - 8, y: y - 10, width: right - left + 16, height: 20 };
        const isCrossed = others.some(({ a, b }) => inside(a, b, box));
        if (isCrossed || taken.some((other) => boxesOverlap(other, box))) continue;
        return {
          pair,
          conductors: [one.id, two.id],
          primitives: [path(loop(left, right, Math.round(y)), "none", "fine")],
        };
      }
    }
  }
  return undefined;
}

const inside = (a: Position, b: Position, box: Box) =>
  Math.min(a.x, b.x) < box.x + box.width &&
  Math.max(a.x, b.x) > box.x &&
  Math.min(a.y, b.y) < box.y + box.height &&
  Math.max(a.y, b.y) > box.y;

/** Marks every twisted pair once, where both run side by side and nothing else stands. */
export function markTwists(sheet: Sheet): Sheet {
  const pairs = new Map<string, SheetConductor[]>();
  for (const conductor of sheet.conductors) {
    if (conductor.twistedPair === undefined) continue;
    pairs.set(conductor.twistedPair, [...(pairs.get(conductor.twistedPair) ?? []), conductor]);
  }
  const taken = sheet.conductors.flatMap(({ labels }) => labels.map(labelBox));
  const symbols = sheet.symbols.filter(({ width, height: tall }) => width > 0 && tall > 0);
  const twists = [...pairs].flatMap(([pair, [one, two]]) =>
    one === undefined || two === undefined
      ? []
      : (markOf(sheet, pair, one, two, [...taken, ...symbols]) ?? []),
  );
  return { ...sheet, twists };
}
