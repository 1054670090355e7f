import { thermistorOhms } from "@probeworthy/circuit";
import type { ComponentOf } from "../../document/component";
import { compileExpression, type Evaluate } from "../../simulation/evaluate";
import type { ElementSetter, NetworkBuilder, World } from "../network-builder";

/** Sensor faults are given in volts at this supply; the outputs stay ratiometric. */
const sensorReferenceVolts = 5;
/** The wiper of a track never reaches the very end. */
const trackEnd = 0.001;

interface Track {
  readonly place: string;
  readonly supply: string;
  readonly ground: string;
  readonly output: string;
  readonly trackOhms: number;
  readonly outputOhms: number;
  /** Where the wiper stands between ground (0) and supply (1) when nothing is wrong. */
  readonly fraction: (world: World) => number;
}

/**
 * A divider supply → wiper → ground; the wiper drives its terminal through the output resistance. With the supply open
 * the output goes to ground, with the ground open to the supply.
 */
function addTrack(track: Track, builder: NetworkBuilder): void {
  const { place, supply, ground, trackOhms } = track;
  const wiper = builder.node(`${place}#wiper`);
  builder.resistor(`${place}#upper`, supply, wiper, trackOhms / 2);
  builder.resistor(`${place}#lower`, wiper, ground, trackOhms / 2);
  builder.resistor(`${place}#output`, wiper, track.output, track.outputOhms);
  const offset = (builder.overlay.sensorOffset.get(place) ?? 0) / sensorReferenceVolts;
  const stuckVolts = builder.overlay.sensorStuck.get(place);
  builder.update((world, set) => {
    const moving = stuckVolts === undefined ? track.fraction(world) : stuckVolts / sensorReferenceVolts;
    const fraction = Math.max(trackEnd, Math.min(1 - trackEnd, moving + offset));
    set.ohms(`${place}#upper`, (1 - fraction) * trackOhms);
    set.ohms(`${place}#lower`, fraction * trackOhms);
  });
}

/**
 * Twist of the torsion bar = effort / stiffness, held at the mechanical stops. Output 1 stands at the fraction
 * 0.5 + span·twist of the track, output 2 at 0.5 − span·twist: a pair mirrored about mid-supply.
 */
export function compileTorqueSensor(sensor: ComponentOf<"torqueSensor">, builder: NetworkBuilder): void {
  const { id, terminals, trackOhms, outputOhms } = sensor;
  const supply = builder.inside(id, terminals.supply);
  const ground = builder.inside(id, terminals.ground);
  const effort = compileExpression(sensor.effort);
  const twist = (world: World): number =>
    Math.max(-sensor.maximumTwist, Math.min(sensor.maximumTwist, effort(world.readings) / sensor.stiffness));
  for (const [terminal, direction] of [
    [terminals.signal1, 1],
    [terminals.signal2, -1],
  ] as const)
    addTrack(
      {
        place: `${id}:${terminal}`,
        supply,
        ground,
        output: builder.inside(id, terminal),
        trackOhms,
        outputOhms,
        fraction: (world) => 0.5 + direction * sensor.spanPerDegree * twist(world),
      },
      builder,
    );
  if (sensor.supplyAmps > 0) builder.load(`${id}#supply`, supply, ground, sensor.supplyAmps);
}

export function compilePositionSensor(sensor: ComponentOf<"positionSensor">, builder: NetworkBuilder): void {
  const { id, tracks } = sensor;
  const position = compileExpression(sensor.position);
  const shift = builder.overlay.sensorShift.get(id) ?? 0;
  for (const track of tracks)
    addTrack(
      {
        place: `${id}:${track.signal}`,
        supply: builder.inside(id, track.supply),
        ground: builder.inside(id, track.ground),
        output: builder.inside(id, track.signal),
        trackOhms: track.trackOhms,
        outputOhms: track.outputOhms,
        fraction: (world) => {
          const moved = Math.max(0, Math.min(1, position(world.readings) + shift));
          return track.atRest + moved * (track.atFull - track.atRest);
        },
      },
      builder,
    );
}

export function compileThermistor(part: ComponentOf<"thermistor">, builder: NetworkBuilder): void {
  const { id, table } = part;
  const temperature = compileExpression(part.temperature);
  const shift = builder.overlay.sensorShift.get(id) ?? 0;
  builder.resistor(id, builder.inside(id, "1"), builder.inside(id, "2"), thermistorOhms(table, 20));
  builder.update((world, set) => set.ohms(id, thermistorOhms(table, temperature(world.readings) + shift)));
}

/** A source of pulses: it stands in one of two phases, and changes between them so many times a second. */
export interface CompiledPulser {
  readonly id: string;
  readonly hertz: Evaluate;
  write(phase: 0 | 1, world: World, set: ElementSetter): void;
}

/** Draws its low current, and its high one in phase 1. Below about a volt it draws nothing. */
export function compileActiveSpeedSensor(
  sensor: ComponentOf<"activeSpeedSensor">,
  builder: NetworkBuilder,
): CompiledPulser {
  const { id, lowAmps, highAmps } = sensor;
  builder.load(id, builder.inside(id, "1"), builder.inside(id, "2"), lowAmps);
  return {
    id,
    hertz: compileExpression(sensor.hertz),
    write: (phase, _, set) => set.quiescent(id, phase === 1 ? highAmps : lowAmps),
  };
}

/** A coil with the peak of its voltage one way round, and the other way round in phase 1. */
export function compilePassiveSpeedSensor(
  sensor: ComponentOf<"passiveSpeedSensor">,
  builder: NetworkBuilder,
): CompiledPulser {
  const { id, peakVoltsPerHertz } = sensor;
  const hertz = compileExpression(sensor.hertz);
  builder.add({
    kind: "voltageSource",
    id,
    positive: builder.inside(id, "1"),
    negative: builder.inside(id, "2"),
    volts: 0,
    ohms: sensor.coilOhms,
  });
  return {
    id,
    hertz,
    write: (phase, world, set) => {
      const peak = peakVoltsPerHertz * Math.max(0, hertz(world.readings));
      set.volts(id, phase === 1 ? peak : -peak);
    },
  };
}
