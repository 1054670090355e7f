import type { CircuitElement, OperatingPoint } from "@probeworthy/circuit";
import type { CompiledVehicle } from "../compile/compile-vehicle";
import type { World } from "../compile/network-builder";
import { batteryAcceptanceOhms, batteryDischargeOhms, batteryOpenVolts } from "../physics/battery";
import { err, ok, type Result } from "../result";
import type { VehicleError, VehicleState } from "../simulation/types";
import { AlternatorControl } from "./alternator-control";
import { type BusPlace, hears, type TimeShare } from "./bus";
import { type LiveCircuit, withCircuit } from "./live-circuit";
import { ModuleRun, writeBias, writeDrive } from "./module-run";
import { RelayControl } from "./relay-control";
import { createWorld, isKeyOff } from "./world";

/** A vehicle at rest in one instant, with everything the layers above ask about. */
export interface Solution {
  readonly runs: readonly ModuleRun[];
  readonly shares: readonly TimeShare[];
  readonly world: World;
  /** Relays that are pulled in, sorted. */
  readonly pulledIn: readonly string[];
  /** Which modules the scan tool hears, and which hear it; only when a tool was connected. */
  readonly tool: ReadonlyMap<string, boolean>;
}

export interface SolveInput {
  /** Elements between electrical nodes: an instrument. */
  readonly extra?: readonly CircuitElement[];
  /** A scan tool on the bus; its elements (bias and drivers) are among `extra`. */
  readonly tool?: BusPlace;
}

/** Passes after which new duties are averaged with the old ones, outputs are shut off, and the search is given up. */
const dampFrom = 20;
const shutOffFrom = 50;
const passLimit = 80;

/**
 * Looks for the state in which network and modules agree: solve, let every module read its terminals, move outputs,
 * solve again until nothing moves; then see who hears whom on the bus, and go on if that has changed.
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
  tool?: BusPlace,
): Result<Solution, VehicleError> {
  const world = createWorld(state, compiled);
  for (const update of compiled.updates) update(world, live);
  const batteries = new BatteryControl(compiled, world, live);
  const relays = compiled.relays.map(
    (relay) => new RelayControl(relay, state.slow.pulledIn?.includes(relay.id) ?? false, live),
  );
  const alternators = compiled.alternators.map(
    (alternator) => new AlternatorControl(alternator, alternator.turns(world)),
  );
  const keyOff = isKeyOff(state, compiled);
  const runs = compiled.modules.map(
    (module) =>
      new ModuleRun(module, state.slow.modules[module.id], keyOff, world.readings.condition, world.ambient),
  );
  for (const run of runs) run.write(live);
  if (tool) {
    writeBias(tool.id, true, live);
    writeDrive(tool.id, false, live);
  }
  const bus = new Bus(runs, tool);

  let fresh = true;
  for (let pass = 0; pass < passLimit; pass++) {
    const solved = live.solve(fresh);
    fresh = false;
    if (!solved.ok) return solved;
    const point = solved.value;
    for (const run of runs) run.look(point);
    let moved = batteries.update(point, live);
    for (const relay of relays) moved = relay.update(point, live) || moved;
    for (const alternator of alternators) moved = alternator.update(point, live) || moved;
    const steady = pass > 0 && !runs.some((run) => run.isOvershooting(point));
    for (const run of runs) moved = run.updatePower(steady, live) || moved;
    bus.exchange();
    if (pass === shutOffFrom) for (const run of runs) run.latchOutputsOff();
    for (const run of runs) moved = run.updateOutputs(point, pass >= dampFrom, live) || moved;
    if (moved) continue;
    const listened = bus.listen(point, live);
    if (!listened.ok) return listened;
    if (!listened.value) continue;
    const pulledIn = relays.filter((relay) => relay.pulledIn).map(({ id }) => id);
    return ok({ runs, shares: listened.value, world, pulledIn: pulledIn.sort(), tool: bus.tool });
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

/** The two-wire bus: who talks, who hears, and what the wires do meanwhile. */
class Bus {
  readonly tool = new Map<string, boolean>();
  private readonly places: ReadonlyMap<ModuleRun, BusPlace>;
  private readonly timesLost = new Map<string, number>();

  constructor(
    private readonly runs: readonly ModuleRun[],
    private readonly toolPlace: BusPlace | undefined,
  ) {
    const places = new Map<ModuleRun, BusPlace>();
    for (const run of runs) {
      const { bus } = run.module.component;
      const high = bus && run.module.terminals.get(bus.canHigh);
      const low = bus && run.module.terminals.get(bus.canLow);
      if (!bus || high === undefined || low === undefined) continue;
      places.set(run, { id: run.module.id, high, low, ground: run.module.ground });
      // Taken as heard until the wires say otherwise: the usual case needs no second look.
      for (const { message } of bus.receives) run.heard.set(message, true);
    }
    this.places = places;
  }

  /** Evaluates all laws until no message changes; a loop of messages that never rests is left where it is. */
  exchange(): void {
    for (let round = 0; round <= this.runs.length + 1; round++) {
      for (const run of this.runs) this.deliver(run);
      let changed = false;
      for (const run of this.runs) changed = run.evaluate() || changed;
      if (!changed) return;
    }
  }

  private deliver(run: ModuleRun): void {
    for (const { message, from, substitute } of run.module.component.bus?.receives ?? []) {
      const sender = this.runs.find((other) => other.module.id === from);
      const arrives = run.powered && (sender?.powered ?? false) && (run.heard.get(message) ?? false);
      run.received.set(message, arrives ? (sender?.sent.get(message) ?? substitute) : substitute);
    }
  }

  /**
   * Lets every powered node talk in turn and sees who understands it. Answers the time shares of the wires' states when
   * that agrees with what was taken for granted so far, nothing when the laws have to be evaluated again. Each talker
   * holds the bus dominant for its own share of the time and the bus rests for the remainder, at least half of it.
   */
  listen(recessive: OperatingPoint, live: LiveCircuit): Result<TimeShare[] | undefined, VehicleError> {
    const talkers = [...this.places].filter(([run]) => run.powered);
    const total = talkers.reduce((sum, [run]) => sum + (run.module.component.bus?.dominantShare ?? 0), 0);
    const scale = total > 0.5 ? 0.5 / total : 1;
    const shares: TimeShare[] = [];
    const heardNow = new Map<ModuleRun, Set<string>>();
    const toolHears = new Set<string>();
    for (const [sender, place] of talkers) {
      const dominant = this.drive(place, live);
      if (!dominant.ok) return dominant;
      shares.push({
        point: dominant.value,
        share: (sender.module.component.bus?.dominantShare ?? 0) * scale,
        talker: place.id,
      });
      for (const [receiver, at] of talkers)
        if (receiver !== sender && hears(at, recessive, dominant.value))
          heardNow.set(receiver, (heardNow.get(receiver) ?? new Set()).add(place.id));
      if (this.toolPlace && hears(this.toolPlace, recessive, dominant.value)) toolHears.add(place.id);
    }
    if (this.toolPlace) {
      const dominant = this.drive(this.toolPlace, live);
      if (!dominant.ok) return dominant;
      for (const [run, at] of this.places)
        this.tool.set(at.id, run.powered && toolHears.has(at.id) && hears(at, recessive, dominant.value));
    }
    if (this.takeOver(heardNow)) return ok(undefined);
    const rest = 1 - shares.reduce((sum, { share }) => sum + share, 0);
    return ok([{ point: recessive, share: rest }, ...shares.filter(({ share }) => share > 0)]);
  }

  private drive(place: BusPlace, live: LiveCircuit): Result<OperatingPoint, VehicleError> {
    writeDrive(place.id, true, live);
    const point = live.solve(false);
    writeDrive(place.id, false, live);
    return point;
  }

  /** True when what is heard differs from what the laws were evaluated with. */
  private takeOver(heardNow: ReadonlyMap<ModuleRun, ReadonlySet<string>>): boolean {
    let changed = false;
    for (const run of this.runs) {
      for (const { message, from } of run.module.component.bus?.receives ?? []) {
        const key = `${run.module.id} ${message}`;
        const lost = this.timesLost.get(key) ?? 0;
        const now = lost < 2 && (heardNow.get(run)?.has(from) ?? false);
        if (now === (run.heard.get(message) ?? false)) continue;
        if (!now) this.timesLost.set(key, lost + 1);
        run.heard.set(message, now);
        changed = true;
      }
    }
    return changed;
  }
}
