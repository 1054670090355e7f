import { expect, test } from "vitest";
import { ampsText, voltsText } from "./potential-line";
import { potentialColour } from "./potential-scale";

/** The first lightness of each theme: [light, dark]. */
const lightness = (volts: number) =>
  [...potentialColour(volts, 12).matchAll(/oklch\(([\d.]+)/g)].map(([, value]) => Number(value));

test("lightness alone tells more volts from fewer, in both themes", () => {
  const scale = [0, 3, 6, 9, 12].map(lightness);
  for (const [index, [light, dark]] of scale.entries()) {
    const before = scale[index - 1];
    if (before === undefined) continue;
    expect(light).toBeLessThan(before[0] ?? 0);
    expect(dark).toBeGreaterThan(before[1] ?? 1);
  }
});

test("below ground and above the supply the scale ends", () => {
  expect(potentialColour(-3, 12)).toBe(potentialColour(0, 12));
  expect(potentialColour(15, 12)).toBe(potentialColour(12, 12));
});

test("figures carry their unit and a real minus", () => {
  expect(voltsText(-0.126)).toBe("\u22120.13 V");
  expect(ampsText(-12.34)).toBe("12.3 A");
  expect(ampsText(0.0123)).toBe("12.3 mA");
  expect(ampsText(0.0004)).toBe("0 A");
});
