import type { Position, Sheet, SheetConductor, SheetConnector, SheetSymbol } from "@probeworthy/diagram";

/** A conductor that hangs on a part, and with which of its ends. */
export interface Follower {
  readonly conductor: SheetConductor;
  readonly first: boolean;
  readonly last: boolean;
}

export interface Following {
  readonly connectors: readonly SheetConnector[];
  readonly conductors: readonly Follower[];
}

/** How far above and below a symbol its connectors and the ends of its conductors lie, px. */
const reach = 68;

/** What goes along when a part is taken hold of: connectors plugged into it, and the conductors that end on it. */
export function whatFollows(sheet: Sheet, { x, y, width, height }: SheetSymbol): Following {
  const isAt = (place: Position) =>
    place.x >= x - 4 &&
    place.x <= x + width + 4 &&
    ((place.y <= y + 4 && place.y >= y - reach) ||
      (place.y >= y + height - 4 && place.y <= y + height + reach));
  const connectors = sheet.connectors.filter(
    ({ inline, cavities }) =>
      !inline && cavities.every(({ x: cavityX, facing }) => isAt({ x: cavityX, y: facing.y })),
  );
  const conductors = sheet.conductors.flatMap((conductor): Follower[] => {
    const [start, end] = [conductor.points[0], conductor.points.at(-1)];
    const first = start !== undefined && isAt(start);
    const last = end !== undefined && isAt(end);
    return first || last ? [{ conductor, first, last }] : [];
  });
  return { connectors, conductors };
}

/** A conductor whose ends have been carried along: still at right angles, its other corners where they were. */
export function carried(
  points: readonly Position[],
  ends: { first: boolean; last: boolean },
  dx: number,
  dy: number,
): readonly Position[] {
  const shifted = ({ x, y }: Position): Position => ({ x: x + dx, y: y + dy });
  if (ends.first && ends.last) return points.map(shifted);
  const ordered = ends.first ? points : [...points].reverse();
  const [end, next, ...rest] = ordered;
  if (end === undefined || next === undefined) return points;
  const to = shifted(end);
  const isUpright = end.x === next.x;
  const beyond = rest[0];
  // The corner slides along the run it belongs to; the far end of a straight line stays, and the line gets a step.
  const middle: readonly Position[] =
    beyond === undefined
      ? isUpright
        ? [{ x: to.x, y: (to.y + next.y) / 2 }, { x: next.x, y: (to.y + next.y) / 2 }, next]
        : [{ x: (to.x + next.x) / 2, y: to.y }, { x: (to.x + next.x) / 2, y: next.y }, next]
      : [isUpright ? { x: to.x, y: next.y } : { x: next.x, y: to.y }, ...rest];
  const whole = [to, ...middle];
  return ends.first ? whole : whole.reverse();
}
