import { pointExists } from "../points/point-ids";
import type { DocumentMessage } from "../simulation/types";
import type { Component, ComponentOf } from "./component";
import type { ConditionValues } from "./condition";
import type { VehicleDocument } from "./vehicle-document";
import { terminalsOf, type VehicleIndex } from "./vehicle-index";

type Report = (path: string, message: string) => void;

/** Cross references that must hold before a document can be simulated. All problems are reported at once. */
export function checkReferences(document: VehicleDocument, index: VehicleIndex): DocumentMessage[] {
  const messages: DocumentMessage[] = [];
  const report: Report = (path, message) => messages.push({ severity: "error", path, message });
  checkDesignators(document, report);
  checkConditions(document, index, report);
  document.components.forEach((component, position) => {
    checkComponent(component, `components[${position}]`, index, report);
  });
  checkConnectors(document, index, report);
  checkConductors(document, index, report);
  checkSystems(document, index, report);
  return messages;
}

function checkDesignators(document: VehicleDocument, report: Report): void {
  const seen = new Map<string, string>();
  const lists = ["components", "connectors", "conductors", "splices", "groundPoints"] as const;
  for (const list of lists) {
    document[list].forEach(({ id }, position) => {
      const path = `${list}[${position}].id`;
      const first = seen.get(id);
      if (first) report(path, `${id} is already used at ${first}; every designator stands once`);
      else seen.set(id, path);
    });
  }
}

function checkConditions(document: VehicleDocument, index: VehicleIndex, report: Report): void {
  const names = new Set<string>();
  document.conditions.forEach((condition, position) => {
    const path = `conditions[${position}]`;
    if (names.has(condition.name)) report(`${path}.name`, `the condition ${condition.name} stands twice`);
    names.add(condition.name);
    if (condition.kind === "choice") {
      if (!condition.options.some((option) => option.value === condition.initial))
        report(`${path}.initial`, `${condition.initial} is not one of the options of ${condition.name}`);
      return;
    }
    if (condition.minimum > condition.maximum)
      report(`${path}.minimum`, "the minimum must not exceed the maximum");
    else if (condition.initial < condition.minimum || condition.initial > condition.maximum)
      report(
        `${path}.initial`,
        `the initial value must lie from ${condition.minimum} to ${condition.maximum}`,
      );
    if (condition.onlyWhen) {
      const other = index.conditions.get(condition.onlyWhen.condition);
      if (other?.kind !== "choice")
        report(`${path}.onlyWhen.condition`, `${condition.onlyWhen.condition} is not a choice condition`);
      else
        for (const value of condition.onlyWhen.is)
          if (!other.options.some((option) => option.value === value))
            report(`${path}.onlyWhen.is`, `${other.name} has no option ${value}`);
    }
  });
}

function requireNumberCondition(name: string, path: string, index: VehicleIndex, report: Report): void {
  if (index.conditions.get(name)?.kind !== "number") report(path, `${name} must name a number condition`);
}

function checkComponent(component: Component, path: string, index: VehicleIndex, report: Report): void {
  const terminals = terminalsOf(component);
  if (new Set(terminals).size !== terminals.length)
    report(path, `${component.id} has two terminals of one name`);
  switch (component.kind) {
    case "chargingSource":
      requireNumberCondition(component.speedCondition, `${path}.speedCondition`, index, report);
      break;
    case "motor":
      if (component.heat)
        requireNumberCondition(
          component.heat.ambientCondition,
          `${path}.heat.ambientCondition`,
          index,
          report,
        );
      break;
    case "composed":
      checkComposed(component, path, report);
      break;
    case "relay":
      if (component.dropOutVolts >= component.pullInVolts)
        report(`${path}.dropOutVolts`, "a relay lets go below the voltage it pulls in at");
      if (
        component.terminals &&
        (component.contact === "changeOver") !== (component.terminals.break !== undefined)
      )
        report(`${path}.terminals.break`, "a change-over contact, and only that, has a break terminal");
      break;
    case "switch":
      checkSwitch(component, path, index, report);
      break;
    case "passive": {
      const socket = component.diagnosticSocket;
      if (socket)
        for (const [key, name] of Object.entries(socket))
          if (!terminals.includes(name))
            report(`${path}.diagnosticSocket.${key}`, `${component.id} has no terminal ${name}`);
      break;
    }
    case "module":
      checkModule(component, path, index, report);
      break;
    default:
      break;
  }
}

function checkComposed(component: ComponentOf<"composed">, path: string, report: Report): void {
  const known = new Set<string>([...component.terminals, ...(component.innerNodes ?? [])]);
  const names = component.parts.map(({ name }) => name);
  component.parts.forEach((part, position) => {
    const place = `${path}.parts[${position}]`;
    const nodes = part.kind === "threshold" ? [...part.between, ...part.senses] : part.between;
    for (const node of nodes)
      if (!known.has(node))
        report(
          place,
          `${component.id} has no terminal or inner node ${node}; it has ${[...known].join(", ")}`,
        );
    if (part.between[0] === part.between[1])
      report(`${place}.between`, "a part lies between two different nodes");
    if (names.indexOf(part.name) !== position)
      report(`${place}.name`, `${part.name} stands twice in ${component.id}`);
    if (part.kind !== "curve") return;
    const problem = curveProblem(part.points);
    if (problem) report(`${place}.points`, problem);
  });
}

/** A curve rises in volts, never falls in amps and goes through the origin: it is a passive part. */
function curveProblem(points: readonly (readonly [number, number])[]): string | undefined {
  const rising = points.every(([volts], at) => at === 0 || volts > (points[at - 1]?.[0] ?? 0));
  if (!rising) return "volts must rise from point to point";
  const steady = points.every(([, amps], at) => at === 0 || amps >= (points[at - 1]?.[1] ?? 0));
  if (!steady) return "amps must not fall from point to point";
  return points.some(([volts, amps]) => volts === 0 && amps === 0)
    ? undefined
    : "the point 0 V, 0 A must be among them";
}

function checkSwitch(
  component: ComponentOf<"switch">,
  path: string,
  index: VehicleIndex,
  report: Report,
): void {
  const condition = index.conditions.get(component.condition);
  if (condition?.kind !== "choice") {
    report(`${path}.condition`, `${component.condition} must name a choice condition`);
    return;
  }
  for (const option of condition.options)
    if (!component.positions[option.value])
      report(`${path}.positions`, `the position ${option.value} is missing; write [] when nothing is joined`);
  for (const [position, pairs] of Object.entries(component.positions)) {
    if (!condition.options.some((option) => option.value === position))
      report(`${path}.positions.${position}`, `${condition.name} has no option ${position}`);
    pairs.forEach((pair, number) => {
      for (const name of pair)
        if (!component.terminals.includes(name))
          report(`${path}.positions.${position}[${number}]`, `${component.id} has no terminal ${name}`);
      if (pair[0] === pair[1])
        report(`${path}.positions.${position}[${number}]`, "a pair joins two different terminals");
    });
  }
}

function checkModule(module: ComponentOf<"module">, path: string, index: VehicleIndex, report: Report): void {
  const terminals = new Set(terminalsOf(module));
  const terminal = (name: string, where: string): void => {
    if (!terminals.has(name)) report(`${path}.${where}`, `${module.id} has no terminal ${name}`);
  };
  terminal(module.ground, "ground");
  terminal(module.supply.terminal, "supply.terminal");
  if (module.supply.dropoutVolts > module.supply.wakeVolts)
    report(`${path}.supply.dropoutVolts`, "the drop-out voltage must not exceed the wake voltage");
  module.groundLinks?.forEach((link, position) => {
    terminal(link.terminal, `groundLinks[${position}].terminal`);
  });
  module.inputs?.forEach((input, position) => {
    terminal(input.terminal, `inputs[${position}].terminal`);
    const { to } = input.pull;
    if (typeof to !== "string" && !module.rails?.some((rail) => rail.name === to.rail))
      report(`${path}.inputs[${position}].pull.to`, `${module.id} has no rail ${to.rail}`);
  });
  module.inputs?.forEach((input, position) => {
    if (input.pulseAgainst !== undefined) terminal(input.pulseAgainst, `inputs[${position}].pulseAgainst`);
  });
  module.internalLinks?.forEach((link, position) => {
    terminal(link.from, `internalLinks[${position}].from`);
    terminal(link.to, `internalLinks[${position}].to`);
    if (link.from === link.to) report(`${path}.internalLinks[${position}].to`, "a link joins two terminals");
  });
  module.rails?.forEach((rail, position) => {
    terminal(rail.terminal, `rails[${position}].terminal`);
  });
  module.outputs?.forEach((output, position) => {
    for (const [key, name] of Object.entries(outputTerminals(output)))
      terminal(name, `outputs[${position}].${key}`);
  });
  module.thermalEstimates?.forEach((estimate, position) => {
    if (estimate.motor !== undefined && index.components.get(estimate.motor)?.kind !== "motor")
      report(`${path}.thermalEstimates[${position}].motor`, `there is no motor ${estimate.motor}`);
  });
  const codes = module.monitors?.map((monitor) => monitor.code) ?? [];
  codes.forEach((code, position) => {
    if (codes.indexOf(code) !== position)
      report(`${path}.monitors[${position}].code`, `the code ${code} stands twice in ${module.id}`);
  });
  if (module.bus) {
    terminal(module.bus.canHigh, "bus.canHigh");
    terminal(module.bus.canLow, "bus.canLow");
  }
  if (module.lin) terminal(module.lin.terminal, "lin.terminal");
  for (const bus of ["bus", "lin"] as const) {
    module[bus]?.receives.forEach((received, position) => {
      const sender = index.components.get(received.from);
      const sends =
        sender?.kind === "module" && sender[bus]?.sends.some((sent) => sent.message === received.message);
      if (!sends)
        report(
          `${path}.${bus}.receives[${position}]`,
          `${received.from} does not send a message ${received.message}; add it to that module's ${bus}.sends`,
        );
    });
  }
}

type Output = NonNullable<ComponentOf<"module">["outputs"]>[number];

/** Terminals an output works with, by the field that names them. */
function outputTerminals(output: Output): Record<string, string> {
  switch (output.kind) {
    case "bridge":
    case "chopper":
      return { plus: output.plus, minus: output.minus, feed: output.feed, return: output.return };
    case "linear":
      return { terminal: output.terminal, feed: output.feed };
    default:
      return {
        terminal: output.terminal,
        ...(output.through === undefined ? {} : { through: output.through }),
      };
  }
}

function checkConnectors(document: VehicleDocument, index: VehicleIndex, report: Report): void {
  document.connectors.forEach((connector, position) => {
    const path = `connectors[${position}]`;
    const component = connector.component ? index.components.get(connector.component) : undefined;
    if (connector.component && !component)
      report(`${path}.component`, `there is no component ${connector.component}`);
    const terminals = component ? terminalsOf(component) : [];
    const seen = new Set<string>();
    if (connector.cavities.length > connector.rows * connector.columns)
      report(
        `${path}.cavities`,
        `${connector.cavities.length} cavities do not fit ${connector.rows} × ${connector.columns} positions`,
      );
    connector.cavities.forEach((cavity, number) => {
      const place = `${path}.cavities[${number}]`;
      if (seen.has(cavity.cavity)) report(`${place}.cavity`, `cavity ${cavity.cavity} stands twice`);
      seen.add(cavity.cavity);
      if (cavity.terminal === undefined) return;
      if (!connector.component)
        report(`${place}.terminal`, "an in-line connector has no component terminal behind its cavities");
      else if (component && !terminals.includes(cavity.terminal))
        report(
          `${place}.terminal`,
          `${component.id} has no terminal ${cavity.terminal}; it has ${terminals.join(", ")}`,
        );
    });
  });
}

function checkConductors(document: VehicleDocument, index: VehicleIndex, report: Report): void {
  document.conductors.forEach((conductor, position) => {
    for (const side of ["from", "to"] as const) {
      const problem = conductorEndProblem(conductor[side], index);
      if (problem) report(`conductors[${position}].${side}`, problem);
    }
    if (conductor.from === conductor.to)
      report(`conductors[${position}].to`, `${conductor.id} starts and ends at ${conductor.from}`);
  });
}

function conductorEndProblem(end: string, index: VehicleIndex): string | undefined {
  if (end.includes(".")) {
    const second = end.endsWith("/b");
    const [id = "", cavity = ""] = (second ? end.slice(0, -2) : end).split(".");
    const connector = index.connectors.get(id);
    if (!connector) return `there is no connector ${id}`;
    if (!connector.cavities.some((entry) => entry.cavity === cavity)) return `${id} has no cavity ${cavity}`;
    if (second && connector.component)
      return `${id} plugs into ${connector.component}: it has no second wired face`;
    return undefined;
  }
  const [id = "", terminal] = end.split(":");
  if (terminal === undefined)
    return index.splices.has(id) || index.groundPoints.has(id)
      ? undefined
      : `there is no splice or ground point ${id}`;
  const component = index.components.get(id);
  if (!component) return `there is no component ${id}`;
  return terminalsOf(component).includes(terminal)
    ? undefined
    : `${id} has no terminal ${terminal}; it has ${terminalsOf(component).join(", ")}`;
}

function checkSystems(document: VehicleDocument, index: VehicleIndex, report: Report): void {
  document.systems.forEach((system, position) => {
    const path = `systems[${position}]`;
    system.components.forEach((id, number) => {
      if (!index.components.has(id)) report(`${path}.components[${number}]`, `there is no component ${id}`);
    });
    system.chart.forEach((row, number) => {
      const place = `${path}.chart[${number}]`;
      for (const key of ["point", "against"] as const) {
        const point = row[key];
        if (point !== undefined && !pointExists(point, index))
          report(`${place}.${key}`, `there is no test point ${point}`);
      }
      for (const message of conditionProblems(row.conditions, index)) report(`${place}.conditions`, message);
      for (const id of row.unplugged ?? [])
        if (!index.connectors.has(id)) report(`${place}.unplugged`, `there is no connector ${id}`);
    });
  });
}

/** What is wrong with a set of condition values, in words; empty when nothing is. */
export function conditionProblems(values: ConditionValues, index: VehicleIndex): string[] {
  return Object.entries(values).flatMap(([name, value]) => {
    const condition = index.conditions.get(name);
    if (!condition) return [`there is no condition ${name}`];
    if (condition.kind === "choice")
      return condition.options.some((option) => option.value === value)
        ? []
        : [`${name} is one of ${condition.options.map((option) => option.value).join(", ")}, not ${value}`];
    if (typeof value !== "number" || !Number.isFinite(value))
      return [`${name} is a number in ${condition.unit}`];
    return value < condition.minimum || value > condition.maximum
      ? [`${name} lies from ${condition.minimum} to ${condition.maximum} ${condition.unit}, not ${value}`]
      : [];
  });
}
