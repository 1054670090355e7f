import type { ComponentOf } from "../../document/component";
import { copperOhmsAt } from "../../physics/copper";
import { compileExpression } from "../../simulation/evaluate";
import type { NetworkBuilder } from "../network-builder";

/** Dry friction of a motor behind a broken coupling, as a part of its torque per ampere: half an ampere turns it. */
const freeFrictionAmps = 0.5;

/** A motor as the settle reads it: torque at the gear's output is amps times `torquePerAmp`. */
export interface CompiledMotor {
  readonly id: string;
  /** N·m/A at the output; 0 behind a broken coupling. */
  readonly torquePerAmp: number;
  /** It is an element that turns, so that it has a speed. */
  readonly turns: boolean;
  readonly windingOhmsAt20: number;
}

/** Winding ohms at 20 °C with the faults of brushes and winding, for the network and for the loss. */
export function compileMotor(motor: ComponentOf<"motor">, builder: NetworkBuilder): CompiledMotor {
  const { id, turning, gear } = motor;
  const { overlay } = builder;
  const share = overlay.shortedTurns.get(id) ?? 1;
  const winding = motor.windingOhmsAt20 * share;
  const brushes = overlay.wornMotors.get(id) ?? 0;
  const constant = motor.torquePerAmp * share;
  const broken = overlay.brokenCouplings.has(id);
  const seized = overlay.seizedMotors.has(id);
  const [a, b] = [builder.inside(id, "1"), builder.inside(id, "2")];
  const ohms = (celsius: number): number => copperOhmsAt(winding, celsius) + brushes;
  const turns = turning !== undefined || broken;
  if (turns) {
    if (!turning) builder.shape(`${id} free`);
    const load = compileExpression(turning?.loadTorque ?? 0);
    const held = compileExpression(turning?.held ?? 0);
    builder.add({
      kind: "motor",
      id,
      plus: a,
      minus: b,
      ohms: motor.windingOhmsAt20,
      motorConstant: motor.torquePerAmp,
      coulombFriction: turning?.frictionTorque ?? freeFrictionAmps * motor.torquePerAmp,
      ...(turning?.loadPerSpeed === undefined || broken ? {} : { loadPerSpeed: turning.loadPerSpeed }),
      ...(turning?.loadPerSpeedSquared === undefined || broken
        ? {}
        : { loadPerSpeedSquared: turning.loadPerSpeedSquared }),
    });
    if (turning && broken) builder.shape(`${id} without load`);
    builder.update((world, set) => {
      // The element follows copper itself; its ohms are given at 20 °C, the brushes' with them.
      set.field(id, "ohms", ohms(world.winding(id)));
      set.field(id, "motorConstant", constant);
      set.field(id, "loadTorque", broken ? 0 : Math.max(0, load(world.readings)));
      set.field(id, "locked", seized || (!broken && held(world.readings) > 0.5));
    });
  } else {
    // Held against its load: no back-EMF, only the winding's copper.
    builder.resistor(id, a, b, motor.windingOhmsAt20);
    builder.update((world, set) => set.ohms(id, ohms(world.winding(id))));
  }
  const ratio = gear ? gear.ratio * gear.efficiency : 1;
  return {
    id,
    torquePerAmp: broken || seized ? 0 : constant * ratio,
    turns,
    windingOhmsAt20: winding + brushes,
  };
}
