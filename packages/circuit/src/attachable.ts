import type { PrimitiveElement } from "./network";

/** Kinds that may be laid across a prepared network: two terminals, no unknown of their own. */
export type Attachable = Extract<
  PrimitiveElement,
  { kind: "resistor" | "voltageSource" | "currentSource" | "switch" | "diode" | "filament" | "curve" }
>;
