import fc from "fast-check";
import { expect, test } from "vitest";
import { paperSizes, splitPages } from "./split-pages";

const sizes = fc.record({
  width: fc.integer({ min: 300, max: 6000 }),
  height: fc.integer({ min: 300, max: 6000 }),
  size: fc.constantFrom("A4" as const, "A3" as const),
});

test("no writing of 11 px becomes smaller than 1.6 mm, and every page fits its paper", () => {
  fc.assert(
    fc.property(sizes, ({ size, ...drawing }) => {
      const { scale, page, parts } = splitPages(drawing, size);
      expect(scale * 11).toBeGreaterThanOrEqual(1.6 - 1e-9);
      expect([page.width, page.height].sort()).toEqual(Object.values(paperSizes[size]).sort());
      for (const part of parts) {
        expect(part.width * scale).toBeLessThanOrEqual(page.width - 16 + 1e-6);
        expect(part.height * scale).toBeLessThanOrEqual(page.height - 22 + 1e-6);
      }
    }),
  );
});

test("the pages together show the whole drawing, neighbours 10 mm of it twice", () => {
  fc.assert(
    fc.property(sizes, ({ size, ...drawing }) => {
      const { scale, parts, columns, rows } = splitPages(drawing, size);
      expect(parts).toHaveLength(columns * rows);
      const last = parts.at(-1);
      expect((last?.x ?? 0) + (last?.width ?? 0)).toBeCloseTo(drawing.width, 6);
      expect((last?.y ?? 0) + (last?.height ?? 0)).toBeCloseTo(drawing.height, 6);
      if (columns > 1) {
        const [one, two] = parts;
        expect((one?.x ?? 0) + (one?.width ?? 0) - (two?.x ?? 0)).toBeCloseTo(10 / scale, 6);
      }
    }),
  );
});

test("a small drawing is one page in the middle of which nothing is blown up", () => {
  const { parts, scale } = splitPages({ width: 600, height: 500 }, "A3");
  expect(parts).toHaveLength(1);
  expect(scale).toBe(0.265);
});
