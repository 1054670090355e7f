import type { OperatingPoint } from "@probeworthy/circuit";
import { type CompiledModule, can } from "../compile/compile-module";
import { openOhms } from "../compile/fault-overlay";
import { type ElementSetter, idleVolts } from "../compile/network-builder";
import { statusBit } from "../diagnosis/status-byte";
import type { Readings } from "../simulation/evaluate";
import type { ModuleMemory } from "../simulation/types";
import { BridgeControl } from "./bridge-control";
import { DriverControl } from "./driver-control";

/** One control module while a settle looks for its resting state. */
export class ModuleRun {
  powered: boolean;
  private latchedOff = false;
  readonly held: readonly string[];
  readonly signals = new Map<string, number>();
  /** Values on the bus by message, as last sent. */
  readonly sent = new Map<string, number>();
  /** Messages received, by message. */
  readonly heard = new Map<string, boolean>();
  readonly received = new Map<string, number>();
  private readonly outputs: readonly (BridgeControl | DriverControl)[];
  private point: OperatingPoint | undefined;
  readonly readings: Readings;

  constructor(
    readonly module: CompiledModule,
    readonly memory: ModuleMemory | undefined,
    keyOff: boolean,
    condition: (name: string) => number,
    private readonly ambient: number,
  ) {
    this.powered = memory?.powered ?? false;
    this.held = keyOff ? [] : (memory?.held ?? []);
    this.outputs = module.outputs.map((output) =>
      output.kind === "bridge" ? new BridgeControl(output) : new DriverControl(output),
    );
    this.readings = {
      volts: (terminal) => this.voltsAt(terminal),
      condition,
      message: (name) => this.received.get(name) ?? 0,
      heard: (name) => (this.heard.get(name) ? 1 : 0),
      amps: (name) => this.outputAmps(name),
      estimate: (name) => this.estimate(name),
      failed: (code) => (this.hasFailed(code) ? 1 : 0),
      own: (name) => this.signals.get(name) ?? 0,
      signal: () => 0,
      loadAmps: () => 0,
      hertz: () => 0,
      speedOf: () => 0,
      torqueOf: () => 0,
      pulledIn: () => 0,
    };
  }

  estimate(name: string): number {
    return this.memory?.estimates[name] ?? this.ambient;
  }

  private hasFailed(code: string): boolean {
    const status = this.memory?.status[code] ?? 0;
    const now = statusBit.testFailed | statusBit.testFailedThisOperationCycle;
    return this.held.includes(code) || (status & now) === now;
  }

  /** Terminal against the module's own ground: what its converter sees. */
  private voltsAt(terminal: string): number {
    const node = this.module.terminals.get(terminal);
    return this.point && node !== undefined
      ? this.point.volts(node) - this.point.volts(this.module.ground)
      : 0;
  }

  private outputAmps(name: string): number {
    const position = this.module.outputs.findIndex((output) => output.name === name);
    return this.point ? (this.outputs[position]?.amps(this.point) ?? 0) : 0;
  }

  get supplyVolts(): number {
    return this.voltsAt(this.module.component.supply.terminal);
  }

  look(point: OperatingPoint): void {
    this.point = point;
  }

  isOvershooting(point: OperatingPoint): boolean {
    return this.outputs.some((output) => output instanceof BridgeControl && output.isOvershooting(point));
  }

  /**
   * Wakes at the wake voltage, drops out below the drop-out voltage. A module that drops out because of its own load
   * would wake again at once; it is left off, the side a supply supervisor protects.
   */
  updatePower(mayDropOut: boolean, set: ElementSetter): boolean {
    const { wakeVolts, dropoutVolts } = this.module.component.supply;
    const volts = this.supplyVolts;
    const drops = this.powered && mayDropOut && volts < dropoutVolts;
    const wakes = !this.powered && !this.latchedOff && volts >= wakeVolts;
    if (!drops && !wakes) return false;
    if (drops) this.latchedOff = true;
    this.powered = wakes;
    this.writePower(set);
    return true;
  }

  private writePower(set: ElementSetter): void {
    const { component, rails, load, id } = this.module;
    set.quiescent(load, this.powered ? component.supply.runningAmps : component.supply.quiescentAmps);
    for (const rail of rails) set.volts(rail.element, this.powered ? rail.volts : idleVolts);
    if (component.bus) writeBias(id, this.powered, set);
  }

  /** Puts every element of this module where this run stands. */
  write(set: ElementSetter): void {
    this.writePower(set);
    for (const output of this.outputs) output.write(set);
    if (this.module.component.bus) writeDrive(this.module.id, false, set);
  }

  /** Evaluates the law. True when something it sends has changed. */
  evaluate(): boolean {
    for (const signal of this.module.signals)
      this.signals.set(signal.name, this.powered ? signal.value(this.readings) : 0);
    let changed = false;
    for (const message of this.module.sends) {
      const value = this.powered ? message.value(this.readings) : 0;
      if (this.sent.get(message.message) !== value) changed = true;
      this.sent.set(message.message, value);
    }
    return changed;
  }

  /** Moves the outputs. True when the circuit has to be solved again. */
  updateOutputs(point: OperatingPoint, damped: boolean, set: ElementSetter): boolean {
    let changed = false;
    for (const output of this.outputs) {
      const moved =
        output instanceof BridgeControl
          ? output.update(
              this.powered ? output.bridge.target(this.readings) : 0,
              this.powered,
              damped,
              point,
              set,
            )
          : output.update(this.powered ? output.driver.on(this.readings) : 0, this.powered, set);
      changed ||= moved;
    }
    return changed;
  }

  latchOutputsOff(): void {
    for (const output of this.outputs) output.latchOff();
  }
}

export function writeBias(id: string, awake: boolean, set: ElementSetter): void {
  for (const wire of ["biasHigh", "biasLow"]) {
    set.volts(`${id}#${wire}`, awake ? can.recessiveVolts : 0);
    set.ohms(`${id}#${wire}`, awake ? can.biasOhms : can.leakOhms);
  }
}

export function writeDrive(id: string, dominant: boolean, set: ElementSetter): void {
  set.volts(`${id}#driveHigh`, dominant ? can.driveHighVolts : 0);
  set.volts(`${id}#driveLow`, can.driveLowVolts);
  for (const wire of ["driveHigh", "driveLow"])
    set.ohms(`${id}#${wire}`, dominant ? can.driveOhms : openOhms);
}
