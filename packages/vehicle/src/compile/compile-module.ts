import type { ComponentOf } from "../document/component";
import type { ControlModule } from "../document/module";
import { compileExpression, type Evaluate } from "../simulation/evaluate";
import { type CanPlace, compileCan } from "./module/can-node";
import { compileLin, type LinPlace } from "./module/lin-node";
import { type CompiledOutput, compileOutput } from "./module/outputs";
import { idleVolts, type NetworkBuilder } from "./network-builder";

/** The divider a sensor supply feeds back from: it discharges the supply when the module sleeps. Common practice, no source. */
const railBleedOhms = 100_000;

interface CompiledMessage {
  readonly message: string;
  readonly value: Evaluate;
}

/** An input that counts pulses, by the nodes between which they swing. */
export interface PulseInput {
  readonly terminal: string;
  readonly node: string;
  readonly against: string;
  readonly swingVolts: number;
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
  readonly outputs: readonly CompiledOutput[];
  readonly rails: readonly { readonly element: string; readonly volts: number }[];
  readonly can: CanPlace | undefined;
  readonly lin: LinPlace | undefined;
  /** Works, but neither talks nor hears. */
  readonly silent: boolean;
  readonly sleep:
    | { readonly afterSeconds: number; readonly asleepAmps: number; readonly stayAwake: Evaluate }
    | undefined;
  readonly pulseInputs: readonly PulseInput[];
  /** Messages on either bus. */
  readonly sends: readonly CompiledMessage[];
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
  readonly scanValues: readonly {
    readonly value: Evaluate;
    /** What a fault adds to the value shown, or shows instead. */
    readonly wrongBy: number;
    readonly stuckAt: number | undefined;
  }[];
}

/** Elements of a control module, every output off and no supply, and its law as closures. */
export function compileModule(module: ComponentOf<"module">, builder: NetworkBuilder): CompiledModule {
  const { id } = module;
  const { overlay } = builder;
  const inside = (terminal: string): string => builder.inside(id, terminal);
  const ground = builder.node(`${id}#ground`);
  const supply = inside(module.supply.terminal);
  builder.resistor(`${id}#groundPath`, inside(module.ground), ground, module.internalGroundOhms);
  module.groundLinks?.forEach((link) => {
    builder.resistor(`${id}#groundLink:${link.terminal}`, inside(link.terminal), ground, link.ohms);
  });
  module.internalLinks?.forEach(({ from, to, ohms }, position) => {
    builder.resistor(`${id}#link${position}`, inside(from), inside(to), ohms);
  });
  builder.load(`${id}#load`, supply, ground, module.supply.quiescentAmps);
  const rails = compileRails(module, supply, ground, builder);
  compilePulls(module, supply, ground, builder);
  const messages = [...(module.bus?.sends ?? []), ...(module.lin?.sends ?? [])];
  const { sleep } = module.supply;
  return {
    id,
    component: module,
    ground,
    load: `${id}#load`,
    supplyNode: supply,
    terminals: new Map(module.terminals.map(({ name }) => [name, inside(name)])),
    signals: module.signals.map(({ name, value }) => ({ name, value: compileExpression(value) })),
    can: compileCan(module, ground, builder),
    lin: compileLin(module, supply, ground, builder),
    outputs: (module.outputs ?? []).map((output) =>
      compileOutput(module, output, { supply, ground }, builder),
    ),
    rails,
    silent: overlay.silentNodes.has(id),
    sleep:
      sleep && !overlay.sleeplessNodes.has(id)
        ? {
            afterSeconds: sleep.afterSeconds,
            asleepAmps: sleep.asleepAmps,
            stayAwake: compileExpression(sleep.stayAwake),
          }
        : undefined,
    pulseInputs: (module.inputs ?? []).flatMap(({ terminal, pulseSwingVolts, pulseAgainst }) =>
      pulseSwingVolts === undefined
        ? []
        : [
            {
              terminal,
              node: inside(terminal),
              against: pulseAgainst === undefined ? ground : inside(pulseAgainst),
              swingVolts: pulseSwingVolts,
            },
          ],
    ),
    sends: messages.map(({ message, value }) => ({ message, value: compileExpression(value) })),
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
    scanValues: (module.scanValues ?? []).map(({ name, value }) => ({
      value: compileExpression(value),
      wrongBy: overlay.wrongScanValues.get(`${id} ${name}`) ?? 0,
      stuckAt: overlay.stuckScanValues.get(`${id} ${name}`),
    })),
  };
}

function compileRails(
  module: ControlModule,
  supply: string,
  ground: string,
  builder: NetworkBuilder,
): CompiledModule["rails"] {
  return (module.rails ?? []).map((rail) => {
    const element = `${module.id}#rail:${rail.name}`;
    const output = builder.inside(module.id, rail.terminal);
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
}

function compilePulls(module: ControlModule, supply: string, ground: string, builder: NetworkBuilder): void {
  const { id } = module;
  module.inputs?.forEach((input, position) => {
    const { to, ohms } = input.pull;
    const rail = typeof to === "string" ? undefined : module.rails?.find((entry) => entry.name === to.rail);
    const far = rail ? builder.inside(id, rail.terminal) : to === "supply" ? supply : ground;
    const near = builder.inside(id, input.terminal);
    if (near !== far) builder.resistor(`${id}#pull:${position}:${input.terminal}`, near, far, ohms);
  });
}
