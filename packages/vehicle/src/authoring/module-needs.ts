import type { ControlModule } from "../document/module";

type Output = NonNullable<ControlModule["outputs"]>[number];

/** The terminals an output works between. */
export function outputTerminals(output: Output): string[] {
  switch (output.kind) {
    case "bridge":
    case "chopper":
      return [output.plus, output.minus, output.feed, output.return];
    case "linear":
      return [output.terminal, output.feed];
    default:
      return [output.terminal, ...(output.through === undefined ? [] : [output.through])];
  }
}

/** Terminals without which a module does not run or hear: supply, grounds, buses, what is joined inside. */
export function vitalTerminals(module: ControlModule): string[] {
  return [
    module.supply.terminal,
    module.ground,
    ...(module.groundLinks ?? []).map(({ terminal }) => terminal),
    ...(module.internalLinks ?? []).flatMap(({ from, to }) => [from, to]),
    ...(module.bus === undefined ? [] : [module.bus.canHigh, module.bus.canLow]),
    ...(module.lin === undefined ? [] : [module.lin.terminal]),
  ];
}

/**
 * The terminals a module looks at for what it sends and for those of its outputs that work one of `driven`: the module then
 * does the same with the rest of its terminals bare.
 */
export function readTerminals(module: ControlModule, driven: ReadonlySet<string>): Set<string> {
  const found = new Set<string>();
  const done = new Set<string>();
  const once = (key: string, work: () => void): void => {
    if (done.has(key)) return;
    done.add(key);
    work();
  };
  const signal = (name: string): void =>
    once(`signal ${name}`, () => {
      read(module.signals.find((candidate) => candidate.name === name)?.value);
    });
  const drives = (output: Output): void =>
    once(`output ${output.name}`, () => {
      for (const terminal of outputTerminals(output)) found.add(terminal);
      read(output);
    });
  const read = (value: unknown): void => {
    if (typeof value === "string") signal(value);
    if (typeof value !== "object" || value === null) return;
    for (const [key, part] of Object.entries(value)) {
      if (key === "volts" || key === "hertz") found.add(String(part));
      else if (key === "amps") module.outputs?.filter(({ name }) => name === part).forEach(drives);
      else if (key === "estimate") {
        const estimate = module.thermalEstimates?.find(({ name }) => name === part);
        once(`estimate ${String(part)}`, () => read([estimate?.watts, estimate?.ambient]));
      } else if (key === "failed") {
        const monitor = module.monitors?.find(({ code }) => code === part);
        once(`monitor ${String(part)}`, () => read([monitor?.enable, monitor?.fails]));
      } else read(part);
    }
  };
  read([module.bus?.sends.map(({ value }) => value), module.lin?.sends.map(({ value }) => value)]);
  read(module.supply.sleep?.stayAwake);
  for (const output of module.outputs ?? [])
    if (outputTerminals(output).some((terminal) => driven.has(terminal))) drives(output);
  return found;
}
