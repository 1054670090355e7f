/**
 * Display colours for the IEC 60757 codes. Each is a real colour of insulation, a little lighter on the dark theme.
 * A conductor is drawn with a thin outline in the ink of the theme, so that white on paper and black on the dark
 * sheet are seen; the code is always printed as well.
 */
export interface DisplayColour {
  readonly name: string;
  readonly light: string;
  readonly dark: string;
}

const colours: Readonly<Record<string, DisplayColour>> = {
  BK: { name: "black", light: "#1b1b1b", dark: "#0a0a0a" },
  BN: { name: "brown", light: "#7a4a21", dark: "#8a5a30" },
  RD: { name: "red", light: "#c8201f", dark: "#d8332f" },
  OG: { name: "orange", light: "#e8761a", dark: "#ee8429" },
  YE: { name: "yellow", light: "#f2cf1d", dark: "#f2d437" },
  GN: { name: "green", light: "#2b8a3e", dark: "#35a04b" },
  BU: { name: "blue", light: "#1f5fbf", dark: "#3478dc" },
  VT: { name: "violet", light: "#7b3fa0", dark: "#9455bd" },
  GY: { name: "grey", light: "#8c9299", dark: "#8c9299" },
  WH: { name: "white", light: "#ffffff", dark: "#ffffff" },
  PK: { name: "pink", light: "#ee8fb0", dark: "#f19bba" },
  GD: { name: "gold", light: "#b8912e", dark: "#c9a23e" },
  TQ: { name: "turquoise", light: "#1fa8a0", dark: "#2cbab1" },
  SR: { name: "silver", light: "#c3c8cc", dark: "#c3c8cc" },
};

/** Display colour of one IEC 60757 code. Throws on a code the standard does not have. */
export function displayColour(code: string): DisplayColour {
  const colour = colours[code];
  if (colour === undefined) throw new Error(`${code} is not an IEC 60757 colour code`);
  return colour;
}

/** `YEBK` → `["YE", "BK"]`; `RD` → `["RD"]`. The text must already be a valid conductor colour. */
export function splitColour(colour: string): readonly [string] | readonly [string, string] {
  return colour.length === 4 ? [colour.slice(0, 2), colour.slice(2)] : [colour];
}

/** `["YE", "BK"]` → `yellow with black stripe`. */
export function colourName(colour: readonly string[]): string {
  const [base, stripe] = colour.map((code) => displayColour(code).name);
  return stripe === undefined ? (base ?? "") : `${base} with ${stripe} stripe`;
}
