/** Ends of the scale from ground to supply, as [lightness, chroma, hue] of OKLCH, on light paper and on dark. */
const ends = {
  light: { ground: [0.86, 0.03, 250], supply: [0.36, 0.17, 315] },
  dark: { ground: [0.38, 0.04, 250], supply: [0.86, 0.13, 315] },
} as const;

const between = (from: readonly number[], to: readonly number[], share: number): string => {
  const [lightness, chroma, hue] = from.map((value, index) => value + ((to[index] ?? value) - value) * share);
  return `oklch(${lightness?.toFixed(3)} ${chroma?.toFixed(3)} ${hue?.toFixed(0)})`;
};

/** A colour of the scale for a theme that follows the page. Volts beyond either end take the colour of that end. */
export function potentialColour(volts: number, supplyVolts: number): string {
  const share = Math.min(1, Math.max(0, volts / supplyVolts));
  const { light, dark } = ends;
  return `light-dark(${between(light.ground, light.supply, share)}, ${between(dark.ground, dark.supply, share)})`;
}
