import { expect, test } from "vitest";
import { stripScale } from "./strip-scale";

test.each([
  ["nothing", [], 0, 1e-3],
  ["positive readings", [12.59, 12.58], 0, 12.59],
  ["negative readings keep zero in sight", [-12.59, -12.58], -12.59, 0],
  ["both signs", [-0.2, 5], -0.2, 5],
  ["zeros", [0, 0], 0, 1e-3],
])("%s", (_case, values, low, high) => {
  expect(stripScale(values)).toEqual({ low, high });
});
