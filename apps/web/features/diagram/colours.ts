import { displayColour } from "@probeworthy/diagram";

/** Colour pair for inline styles that must follow the theme. */
export const themedColour = (code: string): string => {
  const { light, dark } = displayColour(code);
  return `light-dark(${light}, ${dark})`;
};
