import type { ComponentOf } from "../../document/component";
import { batteryDischargeOhms, batteryOpenVolts } from "../../physics/battery";
import { compileExpression } from "../../simulation/evaluate";
import { openOhms } from "../fault-overlay";
import { idleVolts, type NetworkBuilder, type World } from "../network-builder";

export function compileBattery(battery: ComponentOf<"battery">, builder: NetworkBuilder): void {
  const { id } = battery;
  builder.add({
    kind: "voltageSource",
    id,
    positive: builder.inside(id, "+"),
    negative: builder.inside(id, "-"),
    volts: batteryOpenVolts(battery.stateOfCharge),
    ohms: batteryDischargeOhms(battery.internalOhms, battery.stateOfCharge),
  });
}

export function compileFuse(fuse: ComponentOf<"fuse">, builder: NetworkBuilder): void {
  const { id, coldOhms } = fuse;
  builder.resistor(id, builder.inside(id, "1"), builder.inside(id, "2"), coldOhms);
  builder.update((world, set) => set.ohms(id, world.openFuses.has(id) ? openOhms : coldOhms));
}

/** Volts of the machine behind its regulator. */
const machineVolts = 40;
/** From its sense terminal to its case, Ω. Common practice, no source. */
const senseOhms = 10_000;
/** A regulator that looks elsewhere makes up for its own droop but for this, Ω. Common practice, no source. */
const sensedDroopOhms = 0.0005;
/** What is left of the limit with one rectifier diode open. Common practice, no source. */
const diodeOpenShare = 0.65;

/** An alternator that looks at the far end of a wire. */
export interface CompiledAlternator {
  readonly id: string;
  /** Element that moves the regulator's reference by what lies between its terminal and the sense point. */
  readonly sensing: string;
  readonly output: string;
  readonly ground: string;
  readonly volts: number;
  /** Whether the engine turns it fast enough to charge. */
  readonly turns: (world: World) => boolean;
}

/**
 * The machine and its regulator: a stiff source behind a current-limited regulator that cannot take current back.
 * While the engine turns too slowly the regulator is set to nothing and supplies nothing. With `sense: "wire"` its
 * reference is raised by the volts between B+ and S, so that S is held at the set-point; a control
 * (settle/alternator-control) ends that where B+ would climb too far. D+ is the lamp's way to ground while the machine
 * stands, and stands at B+ while it charges.
 */
export function compileChargingSource(
  source: ComponentOf<"chargingSource">,
  builder: NetworkBuilder,
): CompiledAlternator | undefined {
  const { id } = source;
  const { overlay } = builder;
  const plus = builder.inside(id, "B+");
  const ground = builder.inside(id, "31");
  const rotor = builder.node(`${id}#rotor`);
  const belt = overlay.belts.get(id) ?? 1;
  const volts = source.regulatedVolts + (overlay.regulatorOff.get(id) ?? 0);
  const limitAmps = source.limitAmps * (overlay.openDiodes.has(id) ? diodeOpenShare : 1);
  builder.add({
    kind: "voltageSource",
    id: `${id}#machine`,
    positive: rotor,
    negative: ground,
    volts: machineVolts,
    ohms: 0.001,
  });
  builder.add({
    kind: "regulator",
    id,
    input: rotor,
    output: plus,
    reference: source.sense === "wire" ? builder.node(`${id}#reference`) : ground,
    volts: source.regulatedVolts,
    limitAmps: source.limitAmps,
    outputOhms: source.sense === "wire" ? Math.min(sensedDroopOhms, source.outputOhms) : source.outputOhms,
  });
  const speed = compileExpression({ condition: source.speedCondition });
  const lamp = source.lampOhms;
  if (lamp !== undefined) {
    const terminal = builder.inside(id, "D+");
    builder.resistor(`${id}#lampGround`, terminal, ground, lamp);
    builder.resistor(`${id}#lampSupply`, terminal, plus, openOhms);
  }
  const isTurning = (world: World): boolean => speed(world.readings) * belt >= source.minimumSpeed;
  builder.update((world, set) => {
    const turns = isTurning(world);
    set.volts(id, turns ? volts : idleVolts);
    set.field(id, "limitAmps", limitAmps);
    if (lamp === undefined) return;
    set.ohms(`${id}#lampGround`, turns ? openOhms : lamp);
    set.ohms(`${id}#lampSupply`, turns ? lamp : openOhms);
  });
  if (source.sense !== "wire") return undefined;
  const sense = builder.inside(id, "S");
  builder.resistor(`${id}#sense`, sense, ground, senseOhms);
  const sensing = `${id}#sensing`;
  builder.add({
    kind: "controlledSource",
    id: sensing,
    type: "vcvs",
    positive: `${id}#reference`,
    negative: ground,
    controlPositive: plus,
    controlNegative: sense,
    gain: 0,
  });
  return { id, sensing, output: plus, ground, volts, turns: isTurning };
}
