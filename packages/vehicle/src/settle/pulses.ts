import type { OperatingPoint } from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import type { CompiledPulser } from "../compile/components/sensors";
import type { ElementSetter, World } from "../compile/network-builder";
import { ok, type Result } from "../result";
import type { VehicleError } from "../simulation/types";
import type { LiveCircuit } from "./live-circuit";
import type { ModuleRun } from "./module-run";
import type { StateShare, TimeShare } from "./time-share";

/** A swing below this is no alternation, V. */
const leastSwing = 1e-6;
/** How often an input may begin or stop to count within a settle before it stays at nothing. */
const turnsAllowed = 4;
/** Pulsers spend as much time in one phase as in the other. */
const phaseShare = 0.5;

/** What pulses do to the volts between two nodes. */
export interface Alternation {
  /** Half of the swing, V. */
  readonly volts: number;
  readonly hertz: number;
}

/** The two phases of a settled vehicle. */
export type Alternating = (node: string, against: string) => Alternation;

export const nothingAlternates: Alternating = () => ({ volts: 0, hertz: 0 });

/**
 * Sources of pulses in one settle. The network rests with all of them in phase 0; with those that run in phase 1 it is
 * solved once more, and what differs between the two is the pulses. Where several run, a place follows the one that moves
 * it most on its own.
 */
export class Pulses {
  private readonly running: readonly CompiledPulser[];
  private readonly turns = new Map<string, number>();
  private readonly put: (there: boolean, set: ElementSetter) => void;
  private low: OperatingPoint | undefined;
  private high: OperatingPoint | undefined;
  private alone: readonly OperatingPoint[] | undefined;

  constructor(
    compiled: CompiledVehicle,
    private readonly world: World,
    live: LiveCircuit,
  ) {
    for (const pulser of compiled.pulsers) pulser.write(0, world, live);
    this.running = compiled.pulsers.filter((pulser) => pulser.hertz(world.readings) > 0);
    this.put = (there, set) => {
      for (const pulser of this.running) pulser.write(there ? 1 : 0, world, set);
    };
  }

  /** Lets inputs count what swings at them. True when one counts otherwise than before. */
  count(low: OperatingPoint, runs: readonly ModuleRun[], live: LiveCircuit): Result<boolean, VehicleError> {
    if (this.running.length === 0) return ok(false);
    this.low = low;
    this.put(true, live);
    const high = live.solve(false);
    this.put(false, live);
    if (!high.ok) return high;
    this.high = high.value;
    let changed = false;
    for (const run of runs)
      for (const { terminal, node, against, swingVolts } of run.module.pulseInputs) {
        const swing = run.awake ? Math.abs(this.swing(high.value, node, against)) : 0;
        let hertz = 0;
        if (swing >= swingVolts) {
          const source = this.sourceOf(node, against, live);
          if (!source.ok) return source;
          hertz = source.value;
        }
        const key = `${run.module.id} ${terminal}`;
        const turns = this.turns.get(key) ?? 0;
        if (turns >= turnsAllowed) hertz = 0;
        if (hertz === (run.counted.get(terminal) ?? 0)) continue;
        this.turns.set(key, turns + 1);
        run.counted.set(terminal, hertz);
        changed = true;
      }
    return ok(changed);
  }

  /** What phase 1 adds to the state at rest, for half of the time. */
  get shares(): TimeShare[] {
    return this.high ? [{ point: this.high, share: phaseShare }] : [];
  }

  get states(): StateShare[] {
    return this.high ? [{ share: phaseShare, put: this.put }] : [];
  }

  /** Volts and pulses between any two nodes. Solves what it needs at once, while the circuit is at hand. */
  alternating(live: LiveCircuit): Result<Alternating, VehicleError> {
    const { high } = this;
    if (!high) return ok(nothingAlternates);
    const alone = this.solveAlone(live);
    if (!alone.ok) return alone;
    return ok((node, against) => {
      const swing = Math.abs(this.swing(high, node, against));
      return swing < leastSwing
        ? { volts: 0, hertz: 0 }
        : { volts: swing / 2, hertz: this.strongest(node, against, alone.value) };
    });
  }

  private swing(point: OperatingPoint, node: string, against: string): number {
    const { low } = this;
    if (!low) return 0;
    return point.volts(node) - point.volts(against) - (low.volts(node) - low.volts(against));
  }

  private sourceOf(node: string, against: string, live: LiveCircuit): Result<number, VehicleError> {
    const alone = this.solveAlone(live);
    return alone.ok ? ok(this.strongest(node, against, alone.value)) : alone;
  }

  private strongest(node: string, against: string, alone: readonly OperatingPoint[]): number {
    let best = 0;
    let source = this.running[0];
    alone.forEach((point, position) => {
      const swing = Math.abs(this.swing(point, node, against));
      // Of two that move it alike the first counts.
      if (swing > best * (1 + 1e-6)) {
        best = swing;
        source = this.running[position];
      }
    });
    return source ? source.hertz(this.world.readings) : 0;
  }

  /** The network with one pulser after the other in phase 1; a single one needs no such search. */
  private solveAlone(live: LiveCircuit): Result<readonly OperatingPoint[], VehicleError> {
    if (this.running.length < 2) return ok([]);
    if (this.alone) return ok(this.alone);
    const points: OperatingPoint[] = [];
    for (const pulser of this.running) {
      pulser.write(1, this.world, live);
      const point = live.solve(false);
      pulser.write(0, this.world, live);
      if (!point.ok) return point;
      points.push(point.value);
    }
    this.alone = points;
    return ok(points);
  }
}
