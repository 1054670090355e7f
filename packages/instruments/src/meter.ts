import type { DisplayRange } from "./display";

/**
 * The multimeter of the bench: a common 6000-count hand-held. Figures are those of published meter manuals:
 * 10 MΩ input (minimum asked for by vehicle makers' service pages), open-circuit voltage on ohms at most 0.45 V
 * (many meters: 0.2 to 1.5 V), leads 0.1 to 0.2 Ω together, continuity below 30 to 50 Ω, a fused 10 A input.
 */
export const meter = {
  voltsInputOhms: 10e6,
  /** Both leads together. */
  leadOhms: 0.16,
  ohmsOpenVolts: 0.4,
  continuityBelowOhms: 30,
  ampsShuntOhms: 0.01,
  /** A 10 A fuse carries half as much again for the few seconds of a reading; beyond that it opens at once. */
  ampsFuseOpensAbove: 15,
  /** Between leads before an ohms test: more than this falsifies the reading by over 2 %. */
  liveAboveVolts: 0.01,
  /** A source this stiff with nothing but the meter across it is the supply itself, not a circuit under test. */
  supplySourceOhmsBelow: 0.25,
} as const;

export const voltRanges: readonly [DisplayRange, ...DisplayRange[]] = [
  { name: "600 mV", unit: "mV", scale: 1000, decimals: 1 },
  { name: "6 V", unit: "V", scale: 1, decimals: 3 },
  { name: "60 V", unit: "V", scale: 1, decimals: 2 },
  { name: "600 V", unit: "V", scale: 1, decimals: 1 },
];

export interface OhmsRange extends DisplayRange {
  /** Resistor between the meter's 0.4 V source and the red lead: it sets the test current of the range. */
  readonly referenceOhms: number;
}

export const ohmRanges: readonly [OhmsRange, ...OhmsRange[]] = [
  { name: "600 Ω", unit: "Ω", scale: 1, decimals: 1, referenceOhms: 1e3 },
  { name: "6 kΩ", unit: "kΩ", scale: 1e-3, decimals: 3, referenceOhms: 10e3 },
  { name: "60 kΩ", unit: "kΩ", scale: 1e-3, decimals: 2, referenceOhms: 100e3 },
  { name: "600 kΩ", unit: "kΩ", scale: 1e-3, decimals: 1, referenceOhms: 1e6 },
  { name: "6 MΩ", unit: "MΩ", scale: 1e-6, decimals: 3, referenceOhms: 10e6 },
  { name: "60 MΩ", unit: "MΩ", scale: 1e-6, decimals: 2, referenceOhms: 10e6 },
];

export const ampRanges: readonly [DisplayRange, ...DisplayRange[]] = [
  { name: "6 A", unit: "A", scale: 1, decimals: 3 },
  { name: "10 A", unit: "A", scale: 1, decimals: 2 },
];
