import { beforeAll, expect, test } from "vitest";
import type { Sheet } from "../geometry";
import { layoutSheet } from "../layout/layout-sheet";
import { smallVehicle } from "../testing/small-vehicle";
import { drawingToSvg } from "./drawing-to-svg";

let sheet: Sheet;
beforeAll(async () => {
  const result = await layoutSheet(smallVehicle, "fan");
  if (!result.ok) throw new Error(result.error.code);
  sheet = result.value;
}, 60_000);

/** Names of the elements left open at the end, or the first that closes what is not open. */
function unclosed(xml: string): readonly string[] {
  const open: string[] = [];
  for (const [, close, name = "", empty] of xml.matchAll(/<(\/?)([a-z]+)[^<>]*?(\/?)>/g)) {
    if (close === "/") {
      if (open.pop() !== name) return [`/${name}`];
    } else if (empty !== "/") open.push(name);
  }
  return open;
}

test("every element is closed and both themes carry their own colours", () => {
  const light = drawingToSvg(sheet, { theme: "light" });
  const dark = drawingToSvg(sheet, { theme: "dark" });
  for (const svg of [light, dark]) {
    expect(unclosed(svg)).toEqual([]);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  }
  expect(light).toContain("#FAF7F0");
  expect(dark).toContain("#12171D");
  expect(light).not.toContain("var(");
});

test("whatever is written in the document comes out as text, never as markup", () => {
  const nasty = `<script>alert("1")</script> & 'x' \u0000`;
  const symbols = sheet.symbols.map((symbol, index) =>
    index === 0
      ? {
          ...symbol,
          primitives: [
            {
              kind: "text" as const,
              x: 0,
              y: 0,
              text: nasty,
              role: "title" as const,
              anchor: "start" as const,
            },
          ],
        }
      : symbol,
  );
  const svg = drawingToSvg(
    { ...sheet, symbols },
    { theme: "light", titleBlock: { title: nasty, lines: [{ label: nasty, value: nasty }] } },
  );
  expect(svg).not.toContain("<script");
  expect(svg).not.toContain("\u0000");
  expect(svg.split("&lt;script&gt;alert(&quot;1&quot;)&lt;/script&gt; &amp; &#39;x&#39;").length - 1).toBe(5);
  expect(unclosed(svg)).toEqual([]);
});

test("every conductor is drawn with its colours and its code", () => {
  const svg = drawingToSvg(sheet, { theme: "light" });
  for (const conductor of sheet.conductors) {
    const points = conductor.points.map(({ x, y }) => `${x},${y}`).join(" ");
    expect(svg.split(`points="${points}"`).length - 1).toBe(conductor.colour.length + 1);
    expect(svg).toContain(`>${conductor.colour.join("")}</text>`);
  }
});

test("the title block stands below the drawing", () => {
  const plain = drawingToSvg(sheet, { theme: "light" });
  const block = { title: "Fan", lines: [{ label: "Vehicle", value: "Bench rig" }] };
  const framed = drawingToSvg(sheet, { theme: "light", titleBlock: block });
  const height = (svg: string) => Number(/height="(\d+)"/.exec(svg)?.[1]);
  expect(height(plain)).toBe(sheet.height);
  expect(height(framed)).toBeGreaterThan(sheet.height);
  expect(framed).toContain(">Bench rig</text>");
});
