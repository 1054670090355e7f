import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const css = readFileSync(new URL("./tokens.css", import.meta.url), "utf8");

type Scheme = "light" | "dark";
const tokens = new Map(
  [...css.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map(
    ([, name = "", light = "", dark = ""]) => [name, { light, dark }] as const,
  ),
);

function colour(name: string, scheme: Scheme): string {
  const token = tokens.get(name);
  if (token === undefined) throw new Error(`tokens.css has no --${name}`);
  return token[scheme];
}

/** Relative luminance. Source: https://www.w3.org/TR/WCAG22/#dfn-relative-luminance */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const value = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Source: https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio */
function contrast(one: string, other: string): number {
  const [low = 0, high = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (high + 0.05) / (low + 0.05);
}

// WCAG 2.2 success criteria 1.4.3 (text, 4.5 : 1) and 1.4.11 (controls and marks, 3 : 1).
const pairs: readonly [foreground: string, background: string, least: number][] = [
  ["ink", "paper", 7],
  ["ink", "panel", 7],
  ["ink-soft", "paper", 4.5],
  ["ink-soft", "panel", 4.5],
  ["copper", "paper", 4.5],
  ["copper", "panel", 4.5],
  ["on-copper", "copper", 4.5],
  ["paper", "ink", 4.5],
  ["copper-fill", "paper", 3],
  ["copper-fill", "panel", 3],
  ["edge", "paper", 3],
  ["edge", "panel", 3],
];

describe.each(["light", "dark"] as const)("colour tokens, %s", (scheme) => {
  it.each(pairs)("%s on %s reaches %d : 1", (foreground, background, least) => {
    expect(contrast(colour(foreground, scheme), colour(background, scheme))).toBeGreaterThanOrEqual(least);
  });
});

describe("contrast", () => {
  it("is 21 between black and white and 4.54 for the grey everybody quotes", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
    // source: https://webaim.org/articles/contrast/ (#767676 on white is 4.54 : 1)
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
  });
});
