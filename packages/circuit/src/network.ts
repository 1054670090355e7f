import type { Alternator } from "./kinds/alternator";
import type { Battery } from "./kinds/battery";
import type { Comparator } from "./kinds/comparator";
import type { Curve } from "./kinds/curve";
import type { Driver } from "./kinds/driver";
import type { Fuse } from "./kinds/fuse";
import type { Led } from "./kinds/led";
import type { Motor } from "./kinds/motor";
import type { Relay } from "./kinds/relay";
import type { SwitchingPtc } from "./kinds/switching-ptc";
import type { Thermistor } from "./kinds/thermistor";
import type { Zener } from "./kinds/zener";

export type * from "./kinds/alternator";
export type * from "./kinds/battery";
export type * from "./kinds/comparator";
export type * from "./kinds/curve";
export type * from "./kinds/driver";
export type * from "./kinds/fuse";
export type * from "./kinds/led";
export type * from "./kinds/motor";
export type * from "./kinds/relay";
export type * from "./kinds/switching-ptc";
export type * from "./kinds/thermistor";
export type * from "./kinds/zener";

/** A node is a name and nothing else; "0" is not special, the network names its ground. */
export type NodeName = string;

/** A network as its author states it: plain data, any order, every node named by the elements that touch it. */
export interface Network {
  readonly ground: NodeName;
  readonly elements: readonly CircuitElement[];
}

/**
 * Ohm's law; `ohms` > 0. With both `celsius` and `temperatureCoefficient` (1/K) the resistance is
 * ohms · [1 + temperatureCoefficient · (celsius − referenceCelsius)], held above a tenth of `ohms`; referenceCelsius is
 * 20 unless given. See physics/copper-temperature.
 */
export interface Resistor {
  readonly kind: "resistor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly ohms: number;
  readonly celsius?: number;
  readonly temperatureCoefficient?: number;
  readonly referenceCelsius?: number;
}

/** v(positive) − v(negative) = volts; ideal unless an internal resistance `ohms` > 0 is given. */
export interface VoltageSource {
  readonly kind: "voltageSource";
  readonly id: string;
  readonly positive: NodeName;
  readonly negative: NodeName;
  readonly volts: number;
  readonly ohms?: number;
}

/** `amps` flow from → to through the source, so it takes current out of node `from`. */
export interface CurrentSource {
  readonly kind: "currentSource";
  readonly id: string;
  readonly from: NodeName;
  readonly to: NodeName;
  readonly amps: number;
}

/**
 * Shockley junction. Defaults: saturationAmps 1e-14, emission 1, celsius 27, no series resistance, no breakdown.
 * `saturationAmps` holds at `celsius`. With `breakdownVolts` the reverse current is `breakdownAmps` (1e-3) at that
 * voltage and grows exponentially beyond it, by `breakdownEmission` (the same as `emission`). A leak of 1e-12 S lies
 * across every junction. By data-sheet figures instead: elements/led, elements/zener.
 */
export interface Diode {
  readonly kind: "diode";
  readonly id: string;
  readonly anode: NodeName;
  readonly cathode: NodeName;
  readonly saturationAmps?: number;
  readonly emission?: number;
  readonly celsius?: number;
  readonly seriesOhms?: number;
  readonly breakdownVolts?: number;
  readonly breakdownAmps?: number;
  readonly breakdownEmission?: number;
}

/** Two resistances to choose from. Defaults: closedOhms 1e-3, openOhms 1e12 (a dry, clean air gap). */
export interface Switch {
  readonly kind: "switch";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly closed: boolean;
  readonly closedOhms?: number;
  readonly openOhms?: number;
}

/**
 * Incandescent filament. In an operating point in thermal balance (devices/filament); in a transient with the heat it
 * holds (laws/filament-heat), so that a cold one starts with its inrush. `warmUpSeconds` is the time in which the rated
 * watts bring in the heat held at the rated point. Defaults: exponent 0.55, coldRatio 1/15, warmUpSeconds
 * 0.06 s · (rated amps)^(2/3).
 */
export interface Filament {
  readonly kind: "filament";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly ratedVolts: number;
  readonly ratedWatts: number;
  readonly exponent?: number;
  readonly coldRatio?: number;
  readonly warmUpSeconds?: number;
}

/**
 * Linear series regulator. Defaults: dropoutVolts 0.5, quiescentAmps 0, outputOhms 0.01. Sources current only;
 * the output current comes out of `input`, the quiescent current flows input → reference. See devices/regulator.
 * With `foldbackAmps` (no more than limitAmps) that is what it supplies into a short. With `reverseOhms` a junction and
 * that resistance lead from output back to input, as in a module whose supply rail is pulled above its own supply.
 */
export interface Regulator {
  readonly kind: "regulator";
  readonly id: string;
  readonly input: NodeName;
  readonly output: NodeName;
  readonly reference: NodeName;
  readonly volts: number;
  readonly limitAmps: number;
  readonly dropoutVolts?: number;
  readonly quiescentAmps?: number;
  readonly outputOhms?: number;
  readonly foldbackAmps?: number;
  readonly reverseOhms?: number;
}

/**
 * Linear controlled source.
 * vcvs: v(positive) − v(negative) = gain · (v(controlPositive) − v(controlNegative))
 * vccs: amps positive → negative through the source = gain · (v(controlPositive) − v(controlNegative))
 * ccvs / cccs: the same with the amps of `controlElement`, which must be a resistor, a switch, a voltage
 * source, or a controlled source of type vcvs or ccvs.
 */
export interface ControlledSource {
  readonly kind: "controlledSource";
  readonly id: string;
  readonly type: "vcvs" | "vccs" | "ccvs" | "cccs";
  readonly positive: NodeName;
  readonly negative: NodeName;
  readonly controlPositive?: NodeName;
  readonly controlNegative?: NodeName;
  readonly controlElement?: string;
  readonly gain: number;
}

/** Charge = farads · v(a → b). Passes nothing at an operating point. */
export interface Capacitor {
  readonly kind: "capacitor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly farads: number;
}

/** Flux = henries · amps. An ideal connection at an operating point. */
export interface Inductor {
  readonly kind: "inductor";
  readonly id: string;
  readonly a: NodeName;
  readonly b: NodeName;
  readonly henries: number;
}

/** Kinds that the solver has tables for. */
export type PrimitiveElement =
  | Resistor
  | VoltageSource
  | CurrentSource
  | Diode
  | Switch
  | Filament
  | Regulator
  | ControlledSource
  | Capacitor
  | Inductor
  | Curve;

/** Kinds that are made of primitive ones and of devices with equations of their own; see elements/definition. */
export type CompoundElement =
  | Led
  | Zener
  | Driver
  | Comparator
  | Motor
  | Relay
  | Battery
  | Alternator
  | Thermistor
  | SwitchingPtc
  | Fuse;

export type CircuitElement = PrimitiveElement | CompoundElement;

/** Names of the fields of an element that hold a number or a flag. */
type ChangeableField<Element> = {
  [Field in keyof Element]-?: NonNullable<Element[Field]> extends number | boolean ? Field : never;
}[keyof Element];

type ChangeOf<Element> = Element extends CircuitElement
  ? { readonly [Field in ChangeableField<Element>]?: Exclude<Element[Field], undefined> }
  : never;

type Merged<Union> = (Union extends unknown ? (change: Union) => void : never) extends (
  all: infer All,
) => void
  ? All
  : never;

/** Numbers and flags that may change without changing the topology, of whatever kind the element is. */
export type ElementChange = Merged<ChangeOf<CircuitElement>>;
