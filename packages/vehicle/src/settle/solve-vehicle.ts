import type { CircuitElement, OperatingPoint } from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import { type CanPlace, writeCanBias, writeCanDrive } from "../compile/module/can-node";
import type { World } from "../compile/network-builder";
import { batteryAcceptanceOhms, batteryDischargeOhms, batteryOpenVolts } from "../physics/battery";
import { err, ok, type Result } from "../result";
import type { VehicleError, VehicleState } from "../simulation/types";
import { AlternatorControl } from "./alternator-control";
import { Buses } from "./buses";
import { type LiveCircuit, withCircuit } from "./live-circuit";
import { ModuleRun } from "./module-run";
import { type Alternating, Pulses } from "./pulses";
import { RelayControl } from "./relay-control";
import type { StateShare, TimeShare } from "./time-share";
import { createWorld, isKeyOff } from "./world";

/** A vehicle at rest in one instant, with everything the layers above ask about. */
export interface Solution {
  readonly runs: readonly ModuleRun[];
  readonly shares: readonly TimeShare[];
  readonly states: readonly StateShare[];
  readonly world: World;
  readonly alternating: Alternating;
  /** Relays that are pulled in, sorted. */
  readonly pulledIn: readonly string[];
  /** Which modules the scan tool hears, and which hear it; only when a tool was connected. */
  readonly tool: ReadonlyMap<string, boolean>;
}

export interface SolveInput {
  /** Elements between electrical nodes: an instrument. */
  readonly extra?: readonly CircuitElement[];
  /** A scan tool on the bus; its elements (bias and drivers) are among `extra`. */
  readonly tool?: CanPlace;
}

/** Passes after which new duties are averaged with the old ones, outputs are shut off, and the search is given up. */
const dampFrom = 20;
const shutOffFrom = 50;
const passLimit = 80;

/**
 * Looks for the state in which network and modules agree: solve, let every module read its terminals, move outputs,
 * solve again until nothing moves; then see what pulses are counted and who hears whom, and go on if that has changed.
 *
 * What would swing for ever is put to rest on the safe side, in this order of rules: a module that drops out under its
 * own load stays off; a bridge whose feed collapses under it twice stays off; a driver that
 * chatters stays off; a message heard now and then is not heard; whatever still moves after 50 passes is shut off.
 */
export function solveVehicle(
  compiled: CompiledVehicle,
  state: VehicleState,
  input: SolveInput = {},
): Result<Solution, VehicleError> {
  return withCircuit(compiled, input.extra ?? [], (live) => findRest(compiled, state, live, input.tool));
}

/** `solveVehicle` with a circuit at hand. It is left with the values of the resting bus written. */
export function findRest(
  compiled: CompiledVehicle,
  state: VehicleState,
  live: LiveCircuit,
  tool?: CanPlace,
): Result<Solution, VehicleError> {
  const world = createWorld(state, compiled);
  for (const update of compiled.updates) update(world, live);
  const batteries = new BatteryControl(compiled, world, live);
  const relays = compiled.relays.map(
    (relay) => new RelayControl(relay, state.slow.pulledIn?.includes(relay.id) ?? false, live),
  );
  const alternators = compiled.alternators.map(
    (alternator) => new AlternatorControl(alternator, alternator.turns(world), live),
  );
  const surroundings = {
    keyOff: isKeyOff(state, compiled),
    ambient: world.ambient,
    condition: world.readings.condition,
  };
  const runs = compiled.modules.map(
    (module) => new ModuleRun(module, state.slow.modules[module.id], surroundings),
  );
  const pulses = new Pulses(compiled, world, live);
  for (const run of runs) run.write(live);
  if (tool) {
    writeCanBias(tool.id, true, live);
    writeCanDrive(tool.id, false, live);
  }
  const buses = new Buses(runs, tool);

  let fresh = true;
  for (let pass = 0; pass < passLimit; pass++) {
    // On the way a glance will do. What is kept, or read again after another solve, has to be a point of its own.
    const solved = pass === 1 ? live.solve(fresh) : live.glance(fresh);
    fresh = false;
    if (!solved.ok) return solved;
    let point = solved.value;
    for (const run of runs) run.look(point);
    if (pass === 1) {
      // Counted early, the laws find their place once instead of twice.
      const counted = pulses.count(point, runs, live);
      if (!counted.ok) return counted;
    }
    let moved = batteries.update(point, live);
    for (const alternator of alternators) moved = alternator.update(point, live) || moved;
    const steady = pass > 0 && !runs.some((run) => run.isOvershooting(point));
    for (const run of runs) moved = run.updatePower(steady, live) || moved;
    buses.exchange();
    if (pass === shutOffFrom) for (const run of runs) run.latchOutputsOff();
    for (const run of runs) moved = run.updateOutputs(point, pass >= dampFrom, live) || moved;
    if (moved) continue;
    const rest = live.solve(false);
    if (!rest.ok) return rest;
    point = rest.value;
    for (const run of runs) run.look(point);
    // At rest: what drops out, protects itself, wakes or counts may set everything in motion again. A module whose
    // supply is gone may be the only thing that moves, and the first pass has spared it.
    if (pass === 0) for (const run of runs) moved = run.updatePower(true, live) || moved;
    for (const run of runs) moved = run.protectOutputs(point) || moved;
    for (const run of runs) moved = run.updateSleep(live) || moved;
    if (moved) continue;
    const counted = pulses.count(point, runs, live);
    if (!counted.ok) return counted;
    if (counted.value) continue;
    // An armature waits for outputs and pulses: they start from nothing, and a relay that is held must not let go meanwhile.
    for (const relay of relays) moved = relay.update(point, live) || moved;
    if (moved) continue;
    const listened = buses.listen(point, live);
    if (!listened.ok) return listened;
    if (!listened.value) continue;
    const alternating = pulses.alternating(live);
    if (!alternating.ok) return alternating;
    const shares = [...listened.value.shares, ...pulses.shares];
    const left = 1 - shares.reduce((sum, { share }) => sum + share, 0);
    return ok({
      runs,
      shares: [{ point, share: left }, ...shares],
      states: [{ share: left }, ...listened.value.states, ...pulses.states],
      world,
      alternating: alternating.value,
      pulledIn: relays.flatMap(({ id, pulledIn }) => (pulledIn ? [id] : [])).sort(),
      tool: buses.tool,
    });
  }
  return err({
    code: "unsolvable",
    message:
      "the control modules do not come to rest together; look for a control law that contradicts itself",
  });
}

/** A battery takes charge through a higher resistance than it delivers through; see physics/battery.ts. */
class BatteryControl {
  private readonly charging = new Set<string>();

  constructor(
    private readonly compiled: CompiledVehicle,
    private readonly world: World,
    live: LiveCircuit,
  ) {
    for (const battery of compiled.batteries) this.write(battery.id, live);
  }

  private write(id: string, live: LiveCircuit): void {
    const battery = this.compiled.batteries.find((entry) => entry.id === id);
    if (!battery) return;
    const charge = this.world.charge(id);
    const factor = this.compiled.weakBatteries.get(id) ?? 1;
    const discharge = batteryDischargeOhms(battery.internalOhms * factor, charge);
    const extra = this.charging.has(id) ? batteryAcceptanceOhms(battery.capacityAmpereHours, charge) : 0;
    live.volts(id, batteryOpenVolts(charge));
    live.ohms(id, discharge + extra);
  }

  update(point: OperatingPoint, live: LiveCircuit): boolean {
    let moved = false;
    for (const { id } of this.compiled.batteries) {
      // Amps into the plus terminal; a microamp either way is neither charge nor discharge.
      const amps = point.amps(id);
      const takes = amps > 1e-6 || (this.charging.has(id) && amps > -1e-6);
      if (takes === this.charging.has(id)) continue;
      if (takes) this.charging.add(id);
      else this.charging.delete(id);
      this.write(id, live);
      moved = true;
    }
    return moved;
  }
}
