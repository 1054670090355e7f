import type { ControlModule } from "../../document/module";
import { compileExpression, type Evaluate } from "../../simulation/evaluate";
import type { NetworkBuilder } from "../network-builder";

/** Off-state leakage of a switched-off driver or bridge leg, Ω. Common practice, no source. */
export const leakageOhms = 5e6;
/** A terminal that is joined to another inside the module, Ω. Common practice, no source. */
const jointOhms = 0.0005;

/** A half bridge by its mean: the leg stands at duty · (feed − return) above the return. */
export interface BridgeLeg {
  readonly source: string; // vcvs: leg volts = duty · feed volts
  readonly path: string; // resistor leg → terminal
  readonly draw: string; // vccs: feed amps = duty · leg amps
  readonly ohms: number;
  readonly offOhms: number;
  /** Where the leg stands when it is switched off: at the feed (1) for a leak, else at the return. */
  readonly offDuty: 0 | 1;
}

interface Common {
  readonly name: string;
  /** Never switches on. */
  readonly dead: boolean;
}

export interface CompiledBridge extends Common {
  readonly kind: "bridge";
  readonly feed: string;
  readonly return: string;
  readonly target: Evaluate;
  readonly minimumFeedVolts: number;
  /** Elements of the two legs, plus first. */
  readonly legs: readonly [BridgeLeg, BridgeLeg];
}

export interface CompiledDriver extends Common {
  readonly kind: "driver";
  readonly element: string;
  readonly on: Evaluate;
  readonly onOhms: number;
  readonly offOhms: number;
  /** Switches itself off above this current, A. */
  readonly limitAmps: number;
}

export interface CompiledChopper extends Common {
  readonly kind: "chopper";
  readonly duty: Evaluate;
  readonly leg: BridgeLeg;
}

export interface CompiledLinear extends Common {
  readonly kind: "linear";
  readonly element: string;
  readonly terminal: string;
  readonly ground: string;
  readonly feed: string;
  readonly loadVolts: Evaluate;
  readonly onOhms: number;
  readonly offOhms: number;
}

export type CompiledOutput = CompiledBridge | CompiledDriver | CompiledChopper | CompiledLinear;

type Output = NonNullable<ControlModule["outputs"]>[number];

/** Elements of an output, switched off. */
export function compileOutput(
  module: ControlModule,
  output: Output,
  nodes: { readonly supply: string; readonly ground: string },
  builder: NetworkBuilder,
): CompiledOutput {
  const { id } = module;
  const { name } = output;
  const inside = (terminal: string): string => builder.inside(id, terminal);
  const key = `${id} ${name}`;
  const dead = builder.overlay.deadOutputs.has(key);
  const leak = builder.overlay.leakingOutputs.get(key);
  const offOhms = leak ?? leakageOhms;
  const element = `${id}#output:${name}`;
  switch (output.kind) {
    case "bridge": {
      const place = {
        id,
        feed: inside(output.feed),
        back: inside(output.return),
        ohms: output.bridgeOhms / 2,
      };
      const leg = (side: "plus" | "minus", leaking: number | undefined): BridgeLeg =>
        compileLeg({ ...place, name: `${name}:${side}`, terminal: inside(output[side]) }, leaking, builder);
      return {
        kind: "bridge",
        name,
        dead,
        feed: place.feed,
        return: place.back,
        target: compileExpression(output.targetAmps),
        minimumFeedVolts: output.minimumFeedVolts,
        legs: [leg("plus", leak), leg("minus", undefined)],
      };
    }
    case "chopper": {
      const place = { id, name, feed: inside(output.feed), back: inside(output.return), ohms: output.onOhms };
      const minus = inside(output.minus);
      if (minus !== place.back) builder.resistor(`${element}:minus`, minus, place.back, jointOhms);
      return {
        kind: "chopper",
        name,
        dead,
        duty: compileExpression(output.duty),
        leg: compileLeg({ ...place, terminal: inside(output.plus) }, leak, builder),
      };
    }
    case "linear": {
      const terminal = inside(output.terminal);
      builder.resistor(element, terminal, nodes.ground, leakageOhms);
      return {
        kind: "linear",
        name,
        dead,
        element,
        terminal,
        ground: nodes.ground,
        feed: inside(output.feed),
        loadVolts: compileExpression(output.loadVolts),
        onOhms: output.onOhms,
        offOhms,
      };
    }
    case "lowSide":
    case "highSide": {
      const terminal = inside(output.terminal);
      const { through } = output;
      // Counted in the direction the driver conducts, so that {amps} is positive in normal work.
      if (output.kind === "lowSide")
        builder.resistor(
          element,
          terminal,
          through === undefined ? nodes.ground : inside(through),
          leakageOhms,
        );
      else
        builder.resistor(
          element,
          through === undefined ? nodes.supply : inside(through),
          terminal,
          leakageOhms,
        );
      return {
        kind: "driver",
        name,
        dead,
        element,
        on: compileExpression(output.on),
        onOhms: output.onOhms,
        offOhms,
        limitAmps: output.limitAmps ?? Number.POSITIVE_INFINITY,
      };
    }
  }
}

/**
 * Averaged half bridge. The leg stands at duty · (feed − return) above the return, behind its resistance; what it
 * delivers is drawn from the feed times its duty, so that power is conserved:
 *   v(leg) = duty · v(feed, return)      i(feed) = duty · i(leg)
 * A leg of a full bridge that is not driven has duty 0 and stands at the return (its low-side switch is on). A chopper
 * freewheels to the return between its pulses.
 */
function compileLeg(
  place: {
    readonly id: string;
    readonly name: string;
    readonly feed: string;
    readonly back: string;
    readonly terminal: string;
    readonly ohms: number;
  },
  leak: number | undefined,
  builder: NetworkBuilder,
): BridgeLeg {
  const { feed, back, terminal } = place;
  const name = `${place.id}#bridge:${place.name}`;
  const node = builder.node(name);
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
  return {
    source: `${name}:source`,
    path: `${name}:path`,
    draw: `${name}:draw`,
    ohms: place.ohms,
    offOhms: leak ?? leakageOhms,
    offDuty: leak === undefined ? 0 : 1,
  };
}
