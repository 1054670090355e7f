import { expect, test } from "vitest";
import { nearestTarget } from "./nearest-target";

const at = (key: string, x: number, y: number) => ({ key, x, y });
const here = at("here", 0, 0);

test("a target straight ahead is chosen over a nearer one well aside", () => {
  const straight = at("straight", 100, 0);
  expect(nearestTarget([here, at("aside", 40, 50), straight], here, "right")).toBe(straight);
});

test("nothing behind is ever chosen", () => {
  expect(nearestTarget([here, at("left", -10, 0), at("above", 0, -10)], here, "right")).toBeUndefined();
});

test("going there and back returns to the start in a regular row", () => {
  const row = [0, 44, 88, 132].map((x) => at(`p${x}`, x, 0));
  const second = nearestTarget(row, at("p44", 44, 0), "right");
  expect(second?.key).toBe("p88");
  expect(second && nearestTarget(row, second, "left")?.key).toBe("p44");
});
