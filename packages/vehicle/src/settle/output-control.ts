import type { OperatingPoint } from "@probeworthy/circuit";
import type { BridgeLeg, CompiledOutput } from "../compile/module/outputs";
import type { ElementSetter } from "../compile/network-builder";
import type { Readings } from "../simulation/evaluate";
import { BridgeControl } from "./bridge-control";
import { ChopperControl } from "./chopper-control";
import { DriverControl } from "./driver-control";
import { LinearControl } from "./linear-control";

/** What a module asks of an output in one pass of a settle. */
export interface Demand {
  readonly readings: Readings;
  /** The module works. */
  readonly enabled: boolean;
  /** Many passes have gone by: new values are averaged with old ones. */
  readonly damped: boolean;
  readonly point: OperatingPoint;
}

/** An output of a control module while a settle looks for its resting state. */
export interface OutputControl {
  /** Current of the load, A, positive in normal work. */
  amps(point: OperatingPoint): number;
  /** Answers what the law asks for. True when the circuit has to be solved again. */
  update(demand: Demand, set: ElementSetter): boolean;
  /** More current than asked for: a state on the way, in which no supply is judged. */
  isOvershooting(point: OperatingPoint): boolean;
  /** Protects itself at rest. True when it has switched off for this settle. */
  trips(point: OperatingPoint): boolean;
  /** Switches off for the rest of this settle, from the next update on. */
  latchOff(): void;
  /** Writes where it stands into the circuit. */
  write(set: ElementSetter): void;
}

export function createOutputControl(output: CompiledOutput): OutputControl {
  switch (output.kind) {
    case "bridge":
      return new BridgeControl(output);
    case "driver":
      return new DriverControl(output);
    case "chopper":
      return new ChopperControl(output);
    case "linear":
      return new LinearControl(output);
  }
}

/** Sets one leg of a bridge, or a chopper. */
export function writeLeg(leg: BridgeLeg, on: boolean, duty: number, set: ElementSetter): void {
  const share = on ? duty : leg.offDuty;
  const ohms = on ? leg.ohms : leg.offOhms;
  set.ohms(leg.path, ohms);
  set.gain(leg.source, share);
  set.gain(leg.draw, share / ohms);
}
