import { thermistorOhms } from "@probeworthy/circuit";
import type { Component, ComponentOf } from "../document/component";
import { batteryDischargeOhms, batteryOpenVolts } from "../physics/battery";
import { copperOhmsAt } from "../physics/copper";
import { compileExpression } from "../simulation/evaluate";
import type { FaultOverlay } from "./fault-overlay";
import { openOhms } from "./fault-overlay";
import { idleVolts, type NetworkBuilder } from "./network-builder";

/** Elements of every component but control modules. The element that carries a component's current has its id. */
export function compileComponent(component: Component, overlay: FaultOverlay, builder: NetworkBuilder): void {
  const { id } = component;
  const inside = (terminal: string): string => builder.inside(id, terminal);
  switch (component.kind) {
    case "battery":
      builder.add({
        kind: "voltageSource",
        id,
        positive: inside("+"),
        negative: inside("-"),
        volts: batteryOpenVolts(component.stateOfCharge),
        ohms: batteryDischargeOhms(component.internalOhms, component.stateOfCharge),
      });
      break;
    case "chargingSource":
      compileChargingSource(component, builder);
      break;
    case "fuse":
      builder.resistor(id, inside("1"), inside("2"), component.coldOhms);
      builder.update((world, set) => set.ohms(id, world.openFuses.has(id) ? openOhms : component.coldOhms));
      break;
    case "switch":
      compileSwitch(component, builder);
      break;
    case "resistor":
      builder.resistor(id, inside("1"), inside("2"), component.ohms);
      break;
    case "lamp":
      builder.add({
        kind: "filament",
        id,
        a: inside("1"),
        b: inside("2"),
        ratedVolts: component.ratedVolts,
        ratedWatts: component.ratedWatts,
      });
      break;
    case "diode":
      builder.add({
        kind: "diode",
        id,
        anode: inside("1"),
        cathode: inside("2"),
        ...(component.breakdownVolts === undefined ? {} : { breakdownVolts: component.breakdownVolts }),
      });
      break;
    case "motor":
      // Held against its load: no back-EMF, only the winding's copper.
      builder.resistor(id, inside("1"), inside("2"), component.windingOhmsAt20);
      builder.update((world, set) =>
        set.ohms(id, copperOhmsAt(component.windingOhmsAt20, world.winding(id))),
      );
      break;
    case "torqueSensor":
      compileTorqueSensor(component, overlay, builder);
      break;
    case "thermistor": {
      const temperature = compileExpression(component.temperature);
      builder.resistor(id, inside("1"), inside("2"), thermistorOhms(component.table, 20));
      builder.update((world, set) =>
        set.ohms(id, thermistorOhms(component.table, temperature(world.readings))),
      );
      break;
    }
    case "passive":
      for (const terminal of component.terminals) inside(terminal);
      break;
    case "module":
      break;
  }
}

/** Volts of the machine behind its regulator. */
const machineVolts = 40;

/**
 * The machine and its regulator: a stiff source behind a current-limited regulator that cannot take current back.
 * While the engine turns too slowly the regulator is set to nothing and supplies nothing.
 */
function compileChargingSource(source: ComponentOf<"chargingSource">, builder: NetworkBuilder): void {
  const { id } = source;
  const plus = builder.inside(id, "B+");
  const ground = builder.inside(id, "31");
  const rotor = builder.node(`${id}#rotor`);
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
    reference: ground,
    volts: source.regulatedVolts,
    limitAmps: source.limitAmps,
    outputOhms: source.outputOhms,
  });
  builder.update((world, set) => {
    const turns = world.readings.condition(source.speedCondition) >= source.minimumSpeed;
    set.volts(id, turns ? source.regulatedVolts : idleVolts);
  });
}

function compileSwitch(component: ComponentOf<"switch">, builder: NetworkBuilder): void {
  const { id } = component;
  const name = ([a, b]: readonly [string, string]): string => [a, b].sort().join("-");
  const closedIn = new Map<string, { pair: readonly [string, string]; positions: Set<string> }>();
  for (const [position, pairs] of Object.entries(component.positions)) {
    for (const pair of pairs) {
      const entry = closedIn.get(name(pair)) ?? { pair, positions: new Set<string>() };
      entry.positions.add(position);
      closedIn.set(name(pair), entry);
    }
  }
  for (const [key, { pair, positions }] of closedIn) {
    const element = `${id}#${key}`;
    builder.resistor(element, builder.inside(id, pair[0]), builder.inside(id, pair[1]), openOhms);
    builder.update((world, set) =>
      set.ohms(element, positions.has(world.choice(component.condition)) ? component.contactOhms : openOhms),
    );
  }
}

/** Sensor faults are given in volts at this supply; the outputs stay ratiometric. */
const sensorReferenceVolts = 5;
/** The wiper of a track never reaches the very end. */
const trackEnd = 0.001;

/**
 * Twist of the torsion bar = effort / stiffness, held at the mechanical stops. Output 1 stands at the fraction
 * 0.5 + span·twist of the track, output 2 at 0.5 − span·twist (ratiometric pair, mirrored about mid-supply). Each track
 * is a divider supply → wiper → ground; the wiper drives its terminal through the output resistance. With the supply
 * open a pull-down takes the output to 0; with the ground open the track takes it to the supply.
 */
function compileTorqueSensor(
  sensor: ComponentOf<"torqueSensor">,
  overlay: FaultOverlay,
  builder: NetworkBuilder,
): void {
  const { id, terminals, trackOhms } = sensor;
  const supply = builder.inside(id, terminals.supply);
  const ground = builder.inside(id, terminals.ground);
  const effort = compileExpression(sensor.effort);
  const channels = [
    { terminal: terminals.signal1, direction: 1 },
    { terminal: terminals.signal2, direction: -1 },
  ];
  for (const { terminal, direction } of channels) {
    const place = `${id}:${terminal}`;
    const wiper = builder.node(`${place}#wiper`);
    builder.resistor(`${place}#upper`, supply, wiper, trackOhms / 2);
    builder.resistor(`${place}#lower`, wiper, ground, trackOhms / 2);
    builder.resistor(`${place}#output`, wiper, builder.inside(id, terminal), sensor.outputOhms);
    const offset = (overlay.sensorOffset.get(place) ?? 0) / sensorReferenceVolts;
    const stuckVolts = overlay.sensorStuck.get(place);
    builder.update((world, set) => {
      const twist = Math.max(
        -sensor.maximumTwist,
        Math.min(sensor.maximumTwist, effort(world.readings) / sensor.stiffness),
      );
      const moving = 0.5 + direction * sensor.spanPerDegree * twist;
      const wanted = (stuckVolts === undefined ? moving : stuckVolts / sensorReferenceVolts) + offset;
      const fraction = Math.max(trackEnd, Math.min(1 - trackEnd, wanted));
      set.ohms(`${place}#upper`, (1 - fraction) * trackOhms);
      set.ohms(`${place}#lower`, fraction * trackOhms);
    });
  }
  if (sensor.supplyAmps > 0) builder.load(`${id}#supply`, supply, ground, sensor.supplyAmps);
}
