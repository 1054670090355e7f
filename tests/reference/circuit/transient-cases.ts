import type { Network, TransientOptions } from "@probeworthy/circuit";
import { linearCases } from "./transient-linear-cases";
import { motorCases } from "./transient-motor-cases";
import { relayCases } from "./transient-relay-cases";
import { switchingCases } from "./transient-switching-cases";

/** One waveform as both sides call it. */
export type Compared =
  | { readonly volts: string; readonly theirs: string }
  | { readonly amps: string; readonly theirs: string }
  | { readonly quantity: readonly [element: string, name: string]; readonly theirs: string };

/** The same experiment in our words and as a deck written by hand for ngspice. */
export interface TransientCase {
  readonly network: Network;
  readonly run: Pick<TransientOptions, "untilSeconds" | "start" | "drives">;
  readonly deck: readonly string[];
  readonly maxStepSeconds?: number;
  readonly compared: readonly Compared[];
}

export const transientCases: readonly (readonly [name: string, TransientCase])[] = Object.entries({
  ...linearCases,
  ...motorCases,
  ...relayCases,
  ...switchingCases,
});
