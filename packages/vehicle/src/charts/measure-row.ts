import type { ConditionValues } from "../document/condition";
import type { VehicleDocument } from "../document/vehicle-document";
import { ok, type Result } from "../result";
import { advance } from "../simulation/advance";
import { settle } from "../simulation/settle";
import { changeState, startState } from "../simulation/state";
import { thevenin } from "../simulation/thevenin";
import type { PreparedVehicle, VehicleError, VehicleState } from "../simulation/types";

/** One reading a chart asks for. */
export interface ChartReading {
  /** A test point, or for `amps` a conductor or component. */
  readonly point: string;
  readonly against?: string | undefined;
  readonly quantity: "volts" | "ohms" | "amps";
  readonly conditions: ConditionValues;
  readonly unplugged?: readonly string[] | undefined;
}

/** A chart is read some seconds after the conditions were set, so that codes have matured and fuses have opened. */
const restSeconds = 5;

/** Where the black lead of a chart's row stands unless it says otherwise: the battery's negative post. */
export function defaultReference(document: VehicleDocument): string {
  const battery = document.components.find((component) => component.kind === "battery");
  return battery ? `${battery.id}:-` : "body";
}

/** Takes readings from one vehicle; a state that several rows share is reached once. */
export class ChartReader {
  private readonly states = new Map<string, Result<VehicleState, VehicleError>>();

  constructor(private readonly vehicle: PreparedVehicle) {}

  /**
   * Base units: V, Ω, A. Ohms are the source resistance between the points (`Infinity` when nothing joins them), what an
   * ohmmeter reads on a circuit without supply.
   */
  read(reading: ChartReading): Result<number, VehicleError> {
    const state = this.stateFor(reading);
    if (!state.ok) return state;
    const against = reading.against ?? defaultReference(this.vehicle.document);
    if (reading.quantity === "ohms") {
      const source = thevenin(this.vehicle, state.value, reading.point, against);
      return source.ok ? ok(source.value.sourceOhms) : source;
    }
    const settled = settle(this.vehicle, state.value);
    if (!settled.ok) return settled;
    return ok(
      reading.quantity === "amps"
        ? settled.value.amps(reading.point)
        : settled.value.volts(reading.point) - settled.value.volts(against),
    );
  }

  private stateFor({ conditions, unplugged = [] }: ChartReading): Result<VehicleState, VehicleError> {
    const key = JSON.stringify([Object.entries(conditions).sort(), [...unplugged].sort()]);
    const known = this.states.get(key);
    if (known) return known;
    const reached = this.reach(conditions, unplugged);
    this.states.set(key, reached);
    return reached;
  }

  private reach(
    conditions: ConditionValues,
    unplugged: readonly string[],
  ): Result<VehicleState, VehicleError> {
    let state = startState(this.vehicle, conditions);
    for (const connector of unplugged) {
      if (!state.ok) return state;
      state = changeState(this.vehicle, state.value, { unplug: connector });
    }
    return state.ok ? advance(this.vehicle, state.value, restSeconds) : state;
  }
}
