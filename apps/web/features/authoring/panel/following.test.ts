import fc from "fast-check";
import { expect, test } from "vitest";
import { carried } from "./following";

const isRightAngled = (points: readonly { x: number; y: number }[]) =>
  points.slice(1).every((point, index) => point.x === points[index]?.x || point.y === points[index]?.y);

/** Routes that leave upright and turn at every corner. */
const route = fc.array(fc.integer({ min: -400, max: 400 }), { minLength: 1, maxLength: 6 }).map((steps) => {
  let [x, y] = [0, 0];
  const points = [{ x, y }];
  for (const [index, step] of steps.entries()) {
    if (index % 2 === 0) y += step;
    else x += step;
    points.push({ x, y });
  }
  return points;
});

test("the end that is held goes along, the other one stays, all at right angles", () => {
  fc.assert(
    fc.property(
      route,
      fc.integer({ min: -90, max: 90 }),
      fc.integer({ min: -90, max: 90 }),
      fc.boolean(),
      (points, dx, dy, first) => {
        const moved = carried(points, { first, last: !first }, dx, dy);
        const [held, free] = first ? [0, -1] : [-1, 0];
        const old = points.at(held);
        expect(moved.at(held)).toEqual({ x: (old?.x ?? 0) + dx, y: (old?.y ?? 0) + dy });
        expect(moved.at(free)).toEqual(points.at(free));
        expect(isRightAngled(moved)).toBe(true);
      },
    ),
  );
});

test("a conductor with both ends on the part goes along as it is", () => {
  const points = [
    { x: 0, y: 0 },
    { x: 0, y: 40 },
  ];
  expect(carried(points, { first: true, last: true }, 5, 7)).toEqual([
    { x: 5, y: 7 },
    { x: 5, y: 47 },
  ]);
});
