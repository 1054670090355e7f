import type { ConditionValues } from "../document/condition";
import type { Fault } from "../document/fault";
import type { VehicleDocument } from "../document/vehicle-document";

/**
 * Identifies anything a lead can touch:
 * `X2.5:h` harness face of a cavity (back-probed while mated, open front when unplugged) · `X2.5:c` component face ·
 * `X7.2:b` second wired face of an in-line connector · `A1:T1` a bolted terminal, post or stud · `F4:1` a fuse-holder
 * socket (through the fuse's window while fitted) · `F4:1:p` the blade of a pulled fuse in the hand ·
 * `XE1:ring`, `XE1:body` ring terminal and bare metal at a ground point · `body` bare body metal.
 */
export type PointId = string;

export interface TestPoint {
  readonly id: PointId;
  /** `X2 cavity 5, harness side`. */
  readonly title: string;
  /** Component, connector, fuse or ground point it belongs to. */
  readonly owner: string;
  readonly conductor?: string;
  readonly accessible: boolean;
  /** Why a lead cannot go there now, in words; present when not accessible. */
  readonly reason?: string;
}

/** Slow quantities that need time to change. Plain data, rounded to 9 significant digits, safe to store. Secret from learners. */
export interface SlowState {
  readonly seconds: number;
  readonly motors: Readonly<Record<string, { readonly winding: number; readonly housing: number }>>;
  readonly charge: Readonly<Record<string, number>>;
  /** Fuses that are open, sorted. */
  readonly blownFuses: readonly string[];
  /** How far overloaded fuses have come towards opening, 0 to 1; absent while none is warm. */
  readonly fuseHeat?: Readonly<Record<string, number>>;
  readonly modules: Readonly<Record<string, ModuleMemory>>;
  /** Relays whose armature is pulled in, sorted; absent while none is. */
  readonly pulledIn?: readonly string[];
}

export interface ModuleMemory {
  readonly powered: boolean;
  readonly estimates: Readonly<Record<string, number>>;
  /** Seconds each failing monitor has been failing without a break. */
  readonly failingFor: Readonly<Record<string, number>>;
  /** ISO 14229-1 status byte by fault code; survives loss of supply. */
  readonly status: Readonly<Record<string, number>>;
  /** Codes held until the key has been off. */
  readonly held: readonly string[];
  /** Seconds nothing has kept it awake; absent while something does. */
  readonly idleSeconds?: number;
  /** Present while it sleeps. */
  readonly asleep?: true;
}

/** Everything that determines the readings, besides the vehicle and its faults. */
export interface VehicleState {
  readonly conditions: ConditionValues;
  /** Connectors apart, fuses out of their holder: sorted designators. */
  readonly unplugged: readonly string[];
  readonly pulledFuses: readonly string[];
  readonly slow: SlowState;
}

export interface ModuleSnapshot {
  /** It has supply; present `asleep` says that it sleeps all the same: no signals, no outputs, silent on its buses. */
  readonly powered: boolean;
  readonly asleep?: true;
  readonly signals: Readonly<Record<string, number>>;
  readonly heard: Readonly<Record<string, boolean>>;
  readonly supplyVolts: number;
}

export interface SymptomObservation {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly normal: boolean;
}

/** A settled vehicle at one instant. */
export interface Settled {
  readonly state: VehicleState;
  /** Time-averaged voltage against the body, V. Throws on an unknown point. */
  volts(point: PointId): number;
  /**
   * Current through a conductor (from → to), fuse, motor, lamp, LED lamp, resistor (1 → 2), relay contact (`K1`, common →
   * make), relay coil (`K1:coil`) or second filament (`E5:second`), A. Throws on an unknown id.
   */
  amps(id: string): number;
  /**
   * What a source of pulses makes of the volts between two points: half the swing, V, and how often, Hz; both 0 where
   * nothing alternates. Throws on an unknown point.
   */
  alternating(point: PointId, against: PointId): { readonly volts: number; readonly hertz: number };
  readonly modules: Readonly<Record<string, ModuleSnapshot>>;
  readonly symptoms: readonly SymptomObservation[];
}

export type VehicleError =
  | { readonly code: "invalid_document"; readonly messages: readonly DocumentMessage[] }
  | {
      readonly code: "invalid_fault" | "invalid_condition" | "unknown_point" | "unknown_id";
      readonly message: string;
      readonly path: string;
    }
  | { readonly code: "unsolvable"; readonly message: string };

export interface DocumentMessage {
  readonly severity: "error" | "warning";
  /** Path in the document, `conductors[3].from`. */
  readonly path: string;
  readonly message: string;
}

/** A parsed vehicle with its faults applied, ready to be simulated. Opaque to callers but for these two fields. */
export interface PreparedVehicle {
  readonly document: VehicleDocument;
  readonly faults: readonly Fault[];
}

/** A scan tool's answer for one module. */
export type ScanAnswer =
  | {
      readonly ok: false;
      readonly reason: "no_power_at_socket" | "no_communication";
      readonly message: string;
    }
  | {
      readonly ok: true;
      readonly codes: readonly {
        readonly code: string;
        readonly text: string;
        readonly status: number;
        readonly statusText: readonly string[];
      }[];
      readonly values: readonly {
        readonly name: string;
        readonly title: string;
        readonly unit: string;
        readonly value: number;
        readonly text: string;
      }[];
    };
