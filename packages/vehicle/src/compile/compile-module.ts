import type { ComponentOf } from "../document/component";
import type { ControlModule } from "../document/module";
import { compileExpression, type Evaluate } from "../simulation/evaluate";
import { openOhms } from "./fault-overlay";
import { idleVolts, type NetworkBuilder } from "./network-builder";

/**
 * Levels of a CAN transceiver (ISO 11898-2). A powered node holds both wires at 2.5 V against its own ground through
 * 30 kΩ each (from memory; 15 to 50 kΩ are usual). Talking, it drives CANH from 5 V and CANL from 0 V through 45 Ω
 * each, so that 60 Ω between the wires carry (5 − 0)/(45 + 60 + 45) A = 33.3 mA: 3.5 V and 1.5 V, 2 V apart. A shorted
 * wire then takes 111 mA, about what real drivers limit to. Without supply the node leaks through 1 MΩ.
 */
export const can = {
  recessiveVolts: 2.5,
  biasOhms: 30_000,
  driveHighVolts: 5,
  driveLowVolts: 0,
  driveOhms: 45,
  leakOhms: 1e6,
} as const;

/** Off-state leakage of a switched-off driver or bridge leg, Ω. Common practice, no source. */
export const leakageOhms = 5e6;
/** The divider a sensor supply feeds back from: it discharges the supply when the module sleeps. Common practice, no source. */
const railBleedOhms = 100_000;

export interface CompiledBridge {
  readonly kind: "bridge";
  readonly name: string;
  readonly feed: string;
  readonly return: string;
  readonly target: Evaluate;
  readonly minimumFeedVolts: number;
  /** Elements of the two legs, plus first. */
  readonly legs: readonly [BridgeLeg, BridgeLeg];
}

export interface BridgeLeg {
  readonly source: string; // vcvs: leg volts = duty · feed volts
  readonly path: string; // resistor leg → terminal
  readonly draw: string; // vccs: feed amps = duty · leg amps
  readonly ohms: number;
}

export interface CompiledDriver {
  readonly kind: "driver";
  readonly name: string;
  readonly element: string;
  readonly on: Evaluate;
  readonly onOhms: number;
}

export interface CompiledModule {
  readonly id: string;
  readonly component: ControlModule;
  /** The module's own ground, behind its internal ground path. */
  readonly ground: string;
  readonly load: string;
  readonly supplyNode: string;
  readonly terminals: ReadonlyMap<string, string>;
  readonly signals: readonly { readonly name: string; readonly value: Evaluate }[];
  readonly outputs: readonly (CompiledBridge | CompiledDriver)[];
  readonly rails: readonly { readonly element: string; readonly volts: number }[];
  readonly sends: readonly { readonly message: string; readonly value: Evaluate }[];
  readonly estimates: readonly {
    readonly name: string;
    readonly watts: Evaluate;
    readonly ambient: Evaluate;
  }[];
  readonly monitors: readonly {
    readonly code: string;
    readonly enable: Evaluate | undefined;
    readonly fails: Evaluate;
  }[];
  readonly scanValues: readonly Evaluate[];
}

/** Elements of a control module, every output off and no supply, and its law as closures. */
export function compileModule(module: ComponentOf<"module">, builder: NetworkBuilder): CompiledModule {
  const { id } = module;
  const inside = (terminal: string): string => builder.inside(id, terminal);
  const ground = builder.node(`${id}#ground`);
  const supply = inside(module.supply.terminal);
  builder.resistor(`${id}#groundPath`, inside(module.ground), ground, module.internalGroundOhms);
  module.groundLinks?.forEach((link) => {
    builder.resistor(`${id}#groundLink:${link.terminal}`, inside(link.terminal), ground, link.ohms);
  });
  builder.load(`${id}#load`, supply, ground, module.supply.quiescentAmps);
  const rails = (module.rails ?? []).map((rail) => {
    const element = `${id}#rail:${rail.name}`;
    const output = inside(rail.terminal);
    builder.add({
      kind: "regulator",
      id: element,
      input: supply,
      output,
      reference: ground,
      volts: idleVolts,
      limitAmps: rail.limitAmps,
    });
    builder.resistor(`${element}#bleed`, output, ground, railBleedOhms);
    return { element, volts: rail.volts };
  });
  module.inputs?.forEach((input, position) => {
    const { to, ohms } = input.pull;
    const rail = typeof to === "string" ? undefined : module.rails?.find((entry) => entry.name === to.rail);
    const far = rail ? inside(rail.terminal) : to === "supply" ? supply : ground;
    const near = inside(input.terminal);
    if (near !== far) builder.resistor(`${id}#pull:${position}:${input.terminal}`, near, far, ohms);
  });
  compileBus(module, ground, builder);
  const outputs = (module.outputs ?? []).map((output): CompiledBridge | CompiledDriver => {
    if (output.kind === "bridge") return compileBridge(module, output, builder);
    const element = `${id}#output:${output.name}`;
    const terminal = inside(output.terminal);
    // Counted in the direction the driver conducts, so that {amps} is positive in normal work.
    if (output.kind === "lowSide") builder.resistor(element, terminal, ground, leakageOhms);
    else builder.resistor(element, supply, terminal, leakageOhms);
    return {
      kind: "driver",
      name: output.name,
      element,
      on: compileExpression(output.on),
      onOhms: output.onOhms,
    };
  });
  return {
    id,
    component: module,
    ground,
    load: `${id}#load`,
    supplyNode: supply,
    terminals: new Map(module.terminals.map(({ name }) => [name, inside(name)])),
    signals: module.signals.map(({ name, value }) => ({ name, value: compileExpression(value) })),
    outputs,
    rails,
    sends: (module.bus?.sends ?? []).map(({ message, value }) => ({
      message,
      value: compileExpression(value),
    })),
    estimates: (module.thermalEstimates ?? []).map(({ name, watts, ambient }) => ({
      name,
      watts: compileExpression(watts),
      ambient: compileExpression(ambient),
    })),
    monitors: (module.monitors ?? []).map(({ code, enable, fails }) => ({
      code,
      enable: enable === undefined ? undefined : compileExpression(enable),
      fails: compileExpression(fails),
    })),
    scanValues: (module.scanValues ?? []).map(({ value }) => compileExpression(value)),
  };
}

function compileBus(module: ControlModule, ground: string, builder: NetworkBuilder): void {
  const { id, bus } = module;
  if (!bus) return;
  const high = builder.inside(id, bus.canHigh);
  const low = builder.inside(id, bus.canLow);
  if (bus.terminationOhms !== undefined)
    builder.resistor(`${id}#termination`, high, low, bus.terminationOhms);
  addBusNode(id, high, low, ground, builder);
}

/** Bias and driver of one CAN node, asleep. */
export function addBusNode(
  id: string,
  high: string,
  low: string,
  ground: string,
  builder: Pick<NetworkBuilder, "add">,
): void {
  const source = (name: string, wire: string, ohms: number): void =>
    builder.add({
      kind: "voltageSource",
      id: `${id}#${name}`,
      positive: wire,
      negative: ground,
      volts: 0,
      ohms,
    });
  source("biasHigh", high, can.leakOhms);
  source("biasLow", low, can.leakOhms);
  source("driveHigh", high, openOhms);
  source("driveLow", low, openOhms);
}

/**
 * Averaged full bridge. Each leg stands at duty · (feed − return) above the return, behind half the bridge's
 * resistance; what a leg delivers is drawn from the feed times its duty, so that power is conserved:
 *   v(leg) = duty · v(feed, return)      i(feed) = Σ duty · i(leg)
 * The leg that is not driven has duty 0 and stands at the return (its low-side switch is on).
 */
function compileBridge(
  module: ControlModule,
  output: Extract<NonNullable<ControlModule["outputs"]>[number], { kind: "bridge" }>,
  builder: NetworkBuilder,
): CompiledBridge {
  const { id } = module;
  const feed = builder.inside(id, output.feed);
  const back = builder.inside(id, output.return);
  const leg = (side: "plus" | "minus"): BridgeLeg => {
    const name = `${id}#bridge:${output.name}:${side}`;
    const node = builder.node(name);
    const terminal = builder.inside(id, output[side]);
    const ohms = output.bridgeOhms / 2;
    builder.add({
      kind: "controlledSource",
      id: `${name}:source`,
      type: "vcvs",
      positive: node,
      negative: back,
      controlPositive: feed,
      controlNegative: back,
      gain: 0,
    });
    builder.resistor(`${name}:path`, node, terminal, leakageOhms);
    builder.add({
      kind: "controlledSource",
      id: `${name}:draw`,
      type: "vccs",
      positive: feed,
      negative: back,
      controlPositive: node,
      controlNegative: terminal,
      gain: 0,
    });
    return { source: `${name}:source`, path: `${name}:path`, draw: `${name}:draw`, ohms };
  };
  return {
    kind: "bridge",
    name: output.name,
    feed,
    return: back,
    target: compileExpression(output.targetAmps),
    minimumFeedVolts: output.minimumFeedVolts,
    legs: [leg("plus"), leg("minus")],
  };
}
