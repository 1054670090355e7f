import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledModule } from "../compile/compile-module";
import { writeCanBias, writeCanDrive } from "../compile/module/can-node";
import { writeLinDrive } from "../compile/module/lin-node";
import { type ElementSetter, idleVolts } from "../compile/network-builder";
import { statusBit } from "../diagnosis/status-byte";
import type { Readings } from "../simulation/evaluate";
import type { ModuleMemory } from "../simulation/types";
import { createOutputControl, type OutputControl } from "./output-control";

/** What the world outside is to a module. */
export interface Surroundings {
  readonly keyOff: boolean;
  readonly ambient: number;
  condition(name: string): number;
}

/** One control module while a settle looks for its resting state. */
export class ModuleRun {
  /** It has supply; it may be asleep. */
  powered: boolean;
  asleep: boolean;
  private latchedOff = false;
  readonly held: readonly string[];
  readonly signals = new Map<string, number>();
  /** Values on the buses by message, as last sent. */
  readonly sent = new Map<string, number>();
  /** Messages received, by message. */
  readonly heard = new Map<string, boolean>();
  readonly received = new Map<string, number>();
  /** Pulses counted, by terminal, Hz. */
  readonly counted = new Map<string, number>();
  private readonly outputs: readonly OutputControl[];
  private point: OperatingPoint | undefined;
  readonly readings: Readings;

  constructor(
    readonly module: CompiledModule,
    readonly memory: ModuleMemory | undefined,
    private readonly surroundings: Surroundings,
  ) {
    this.powered = memory?.powered ?? false;
    this.asleep = this.powered && module.sleep !== undefined && (memory?.asleep ?? false);
    this.held = surroundings.keyOff ? [] : (memory?.held ?? []);
    this.outputs = module.outputs.map(createOutputControl);
    this.readings = {
      volts: (terminal) => this.voltsAt(terminal),
      condition: (name) => surroundings.condition(name),
      message: (name) => this.received.get(name) ?? 0,
      heard: (name) => (this.heard.get(name) ? 1 : 0),
      amps: (name) => this.outputAmps(name),
      estimate: (name) => this.estimate(name),
      failed: (code) => (this.hasFailed(code) ? 1 : 0),
      own: (name) => this.signals.get(name) ?? 0,
      hertz: (terminal) => this.counted.get(terminal) ?? 0,
      signal: () => 0,
      loadAmps: () => 0,
      speedOf: () => 0,
      torqueOf: () => 0,
      pulledIn: () => 0,
    };
  }

  /** It runs its law, drives its outputs and talks. */
  get awake(): boolean {
    return this.powered && !this.asleep;
  }

  estimate(name: string): number {
    return this.memory?.estimates[name] ?? this.surroundings.ambient;
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
    return this.outputs.some((output) => output.isOvershooting(point));
  }

  /**
   * Switches on at the wake voltage, drops out below the drop-out voltage. A module that drops out because of its own
   * load would wake again at once; it is left off, the side a supply supervisor protects. With the supply its sleep is lost.
   */
  updatePower(mayDropOut: boolean, set: ElementSetter): boolean {
    const { wakeVolts, dropoutVolts } = this.module.component.supply;
    const volts = this.supplyVolts;
    const drops = this.powered && mayDropOut && volts < dropoutVolts;
    const wakes = !this.powered && !this.latchedOff && volts >= wakeVolts;
    if (!drops && !wakes) return false;
    if (drops) this.latchedOff = true;
    this.powered = wakes;
    this.asleep = false;
    this.writePower(set);
    return true;
  }

  /** Whether something keeps it awake now. Asleep it still looks at its terminals and listens to its buses. */
  get staysAwake(): boolean {
    const { sleep } = this.module;
    return sleep === undefined || sleep.stayAwake(this.readings) > 0.5;
  }

  /** Wakes a sleeper that something keeps awake. */
  updateSleep(set: ElementSetter): boolean {
    if (!this.asleep || !this.staysAwake) return false;
    this.asleep = false;
    this.writePower(set);
    return true;
  }

  private writePower(set: ElementSetter): void {
    const { component, rails, load, id, sleep } = this.module;
    const { runningAmps, quiescentAmps } = component.supply;
    const asleepAmps = sleep?.asleepAmps ?? quiescentAmps;
    set.quiescent(load, this.awake ? runningAmps : this.powered ? asleepAmps : quiescentAmps);
    for (const rail of rails) set.volts(rail.element, this.awake ? rail.volts : idleVolts);
    if (component.bus) writeCanBias(id, this.awake, set);
  }

  /** Puts every element of this module where this run stands. */
  write(set: ElementSetter): void {
    this.writePower(set);
    for (const output of this.outputs) output.write(set);
    if (this.module.can) writeCanDrive(this.module.id, false, set);
    if (this.module.lin) writeLinDrive(this.module.id, false, set);
  }

  /** Evaluates the law. True when something it sends has changed. */
  evaluate(): boolean {
    for (const signal of this.module.signals)
      this.signals.set(signal.name, this.powered ? signal.value(this.readings) : 0);
    let changed = false;
    for (const message of this.module.sends) {
      const value = this.awake ? message.value(this.readings) : 0;
      if (this.sent.get(message.message) !== value) changed = true;
      this.sent.set(message.message, value);
    }
    return changed;
  }

  /** Moves the outputs. True when the circuit has to be solved again. */
  updateOutputs(point: OperatingPoint, damped: boolean, set: ElementSetter): boolean {
    const demand = { readings: this.readings, enabled: this.awake, damped, point };
    let changed = false;
    for (const output of this.outputs) changed = output.update(demand, set) || changed;
    return changed;
  }

  /** Lets outputs at rest protect themselves. True when one has switched off. */
  protectOutputs(point: OperatingPoint): boolean {
    let tripped = false;
    for (const output of this.outputs) tripped = output.trips(point) || tripped;
    return tripped;
  }

  latchOutputsOff(): void {
    for (const output of this.outputs) output.latchOff();
  }
}
