/** The columns of a chart and the header words that mean them; case, spaces and punctuation do not matter. */
export const chartColumns = {
  terminal: ["terminal", "point", "testpoint", "pin", "cavity"],
  against: ["against", "reference", "ref", "to", "black", "blacklead"],
  function: ["function", "description", "signal", "name"],
  condition: ["condition", "conditions", "state", "when"],
  low: ["expectedlow", "low", "min", "minimum", "lowerlimit"],
  high: ["expectedhigh", "high", "max", "maximum", "upperlimit"],
  unit: ["unit", "units"],
} as const;
export type ChartColumn = keyof typeof chartColumns;

export const requiredColumns: readonly ChartColumn[] = [
  "terminal",
  "function",
  "condition",
  "low",
  "high",
  "unit",
];

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z]/g, "");

/** The column a header cell means, if any. */
export function toColumn(header: string): ChartColumn | undefined {
  const word = plain(header);
  const found = Object.entries(chartColumns).find(([, words]) => (words as readonly string[]).includes(word));
  return found?.[0] as ChartColumn | undefined;
}

/** Units a chart may use: the quantity they ask for and their size in the base unit. */
export const chartUnits = {
  V: { quantity: "volts", size: 1 },
  mV: { quantity: "volts", size: 1e-3 },
  Ω: { quantity: "ohms", size: 1 },
  kΩ: { quantity: "ohms", size: 1e3 },
  A: { quantity: "amps", size: 1 },
} as const;
export type ChartUnit = keyof typeof chartUnits;

const unitWords: Readonly<Record<string, ChartUnit>> = {
  v: "V",
  volt: "V",
  volts: "V",
  mv: "mV",
  millivolt: "mV",
  millivolts: "mV",
  ω: "Ω", // Greek omega; the ohm sign U+2126 has the same small letter
  ohm: "Ω",
  ohms: "Ω",
  kω: "kΩ",
  kohm: "kΩ",
  kohms: "kΩ",
  a: "A",
  amp: "A",
  amps: "A",
  ampere: "A",
};

export const toUnit = (text: string): ChartUnit | undefined =>
  text.trim() === "MV" ? undefined : unitWords[text.trim().toLowerCase()];

/** A figure with a decimal point or comma; `undefined` when the text is no figure. */
export function toNumber(text: string): number | undefined {
  const compact = text.replace(/[\s\u00a0]/g, "").replace("−", "-");
  return /^[-+]?\d+([.,]\d+)?(e[-+]?\d+)?$/i.test(compact) ? Number(compact.replace(",", ".")) : undefined;
}
