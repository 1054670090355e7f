import type { PaperDrawing } from "@probeworthy/diagram";
import { expect, test } from "vitest";
import { drawingToPdf } from "./sheet-to-pdf";

const drawing = (width: number, height: number): PaperDrawing => ({
  title: "Radiator fan",
  width,
  height,
  strokes: [
    { kind: "rect", x: 0, y: 0, width, height, fill: "#FFFFFF" },
    {
      kind: "line",
      points: [
        { x: 10, y: 10 },
        { x: 10, y: 90 },
      ],
      pen: { colour: "#B0272B", width: 3, dash: [9, 7] },
    },
    { kind: "circle", x: 40, y: 40, radius: 9, pen: { colour: "#1F2A37", width: 1 } },
    { kind: "path", d: "M 10 10 A 5 5 0 0 1 20 10", pen: { colour: "#1F2A37", width: 1 } },
    {
      kind: "text",
      x: 60,
      y: 60,
      text: "R8 0.9 Ω",
      size: 11,
      isMono: true,
      isBold: false,
      anchor: "end",
      colour: "#1F2A37",
    },
  ],
});
const read = (bytes: Uint8Array) => new TextDecoder("latin1").decode(bytes);

test("a small drawing is one page with its types inside", async () => {
  const text = read(await drawingToPdf(drawing(600, 500), "A4"));
  expect(text.startsWith("%PDF-")).toBe(true);
  expect(text.match(/\/Type \/Page\b/g)).toHaveLength(1);
  // Each used file once: the mono for the figures, the sans for Ω and for the line at the foot.
  expect(new Set(text.match(/\/FontName \/[A-Z]+\+[A-Za-z-]+/g)).size).toBe(3);
});

test("a large drawing goes on several pages", async () => {
  const text = read(await drawingToPdf(drawing(3000, 2500), "A4"));
  expect(text.match(/\/Type \/Page\b/g)?.length).toBeGreaterThan(3);
});
