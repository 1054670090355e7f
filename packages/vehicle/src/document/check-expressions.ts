import type { DocumentMessage } from "../simulation/types";
import type { Component, ComponentOf } from "./component";
import type { Expression } from "./expression";
import { type ExpressionReference, expressionReferences } from "./expression-references";
import type { VehicleDocument } from "./vehicle-document";
import type { VehicleIndex } from "./vehicle-index";

/** What an expression may name where it stands. */
interface Scope {
  readonly conditions: boolean;
  /** The module whose law this is, and the signals that stand before the expression. */
  readonly module?: ComponentOf<"module">;
  readonly signals?: ReadonlySet<string>;
  /** Symptoms look across modules and at load currents. */
  readonly across: boolean;
}

type Report = (path: string, message: string) => void;

const loadKinds: readonly Component["kind"][] = [
  "motor",
  "lamp",
  "twoFilamentLamp",
  "ledLamp",
  "relay",
  "resistor",
  "fuse",
  "diode",
  "thermistor",
];

/** Checks that every name used in an expression exists and may be used in that place. */
export function checkExpressions(document: VehicleDocument, index: VehicleIndex): DocumentMessage[] {
  const messages: DocumentMessage[] = [];
  const report: Report = (path, message) => messages.push({ severity: "error", path, message });

  const check = (expression: Expression | undefined, path: string, scope: Scope): void => {
    if (expression === undefined) return;
    for (const reference of expressionReferences(expression)) {
      const problem = findProblem(reference, scope, index);
      if (problem) report(path, problem);
    }
  };

  document.components.forEach((component, position) => {
    const path = `components[${position}]`;
    for (const [field, expression] of worldExpressions(component))
      check(expression, `${path}.${field}`, { conditions: true, across: false });
    if (component.kind === "module") checkModule(component, path, check);
  });
  document.symptoms.forEach((symptom, position) => {
    check(symptom.value, `symptoms[${position}].value`, { conditions: true, across: true });
  });
  return messages;
}

/** Expressions of a component that see conditions only, by their path in it. */
function worldExpressions(component: Component): [string, Expression | undefined][] {
  switch (component.kind) {
    case "torqueSensor":
      return [["effort", component.effort]];
    case "thermistor":
      return [["temperature", component.temperature]];
    case "positionSensor":
      return [["position", component.position]];
    case "activeSpeedSensor":
    case "passiveSpeedSensor":
      return [["hertz", component.hertz]];
    case "motor":
      return [
        ["turning.loadTorque", component.turning?.loadTorque],
        ["turning.held", component.turning?.held],
      ];
    case "composed":
      return component.parts.flatMap((part, position): [string, Expression | undefined][] => {
        const path = `parts[${position}]`;
        if (part.kind === "resistor") return [[`${path}.ohms`, part.ohms]];
        if (part.kind === "switch") return [[`${path}.closed`, part.closed]];
        return part.kind === "source" ? [[`${path}.volts`, part.volts]] : [];
      });
    default:
      return [];
  }
}

function checkModule(
  module: ComponentOf<"module">,
  path: string,
  check: (expression: Expression | undefined, path: string, scope: Scope) => void,
): void {
  const signals = new Set<string>();
  const scope: Scope = { conditions: false, module, signals, across: false };
  module.signals.forEach((signal, position) => {
    check(signal.value, `${path}.signals[${position}].value`, scope);
    signals.add(signal.name);
  });
  // A loss may come from what the world does to the motor, so estimates may name conditions (ambient).
  const plant: Scope = { ...scope, conditions: true };
  module.thermalEstimates?.forEach((estimate, position) => {
    check(estimate.watts, `${path}.thermalEstimates[${position}].watts`, plant);
    check(estimate.ambient, `${path}.thermalEstimates[${position}].ambient`, plant);
  });
  module.bus?.sends.forEach((sent, position) => {
    // A sender may measure the world itself (wheel speed, engine speed) where no sensor is modelled.
    check(sent.value, `${path}.bus.sends[${position}].value`, plant);
  });
  module.lin?.sends.forEach((sent, position) => {
    check(sent.value, `${path}.lin.sends[${position}].value`, plant);
  });
  check(module.supply.sleep?.stayAwake, `${path}.supply.sleep.stayAwake`, plant);
  module.outputs?.forEach((output, position) => {
    const [key, asked] = outputLaw(output);
    check(asked, `${path}.outputs[${position}].${key}`, scope);
  });
  module.monitors?.forEach((monitor, position) => {
    check(monitor.enable, `${path}.monitors[${position}].enable`, scope);
    check(monitor.fails, `${path}.monitors[${position}].fails`, scope);
  });
  module.scanValues?.forEach((value, position) => {
    // As with sends: a module shows what it measures with a sensor that is not modelled.
    check(value.value, `${path}.scanValues[${position}].value`, plant);
  });
}

type Output = NonNullable<ComponentOf<"module">["outputs"]>[number];

function outputLaw(output: Output): [string, Expression] {
  switch (output.kind) {
    case "bridge":
      return ["targetAmps", output.targetAmps];
    case "chopper":
      return ["duty", output.duty];
    case "linear":
      return ["loadVolts", output.loadVolts];
    default:
      return ["on", output.on];
  }
}

function findProblem(reference: ExpressionReference, scope: Scope, index: VehicleIndex): string | undefined {
  const { module } = scope;
  const { name } = reference;
  switch (reference.kind) {
    case "condition":
      if (!index.conditions.has(name)) return `there is no condition ${name}; declare it under conditions`;
      return scope.conditions
        ? undefined
        : `a control law cannot see the condition ${name} directly; read a terminal or a message instead`;
    case "ownSignal":
      if (!module) return `${name} names a signal, which only a module has; use {signal, of} or {condition}`;
      return scope.signals?.has(name)
        ? undefined
        : `${module.id} has no signal ${name} before this place; signals are evaluated in order`;
    case "volts":
      return module?.terminals.some((terminal) => terminal.name === name)
        ? undefined
        : `${module?.id ?? "this component"} has no terminal ${name} to measure`;
    case "message":
    case "heard":
      return [...(module?.bus?.receives ?? []), ...(module?.lin?.receives ?? [])].some(
        (received) => received.message === name,
      )
        ? undefined
        : `${module?.id ?? "this component"} does not receive a message ${name}; add it to bus.receives or lin.receives`;
    case "amps":
      return module?.outputs?.some((output) => output.name === name)
        ? undefined
        : `${module?.id ?? "this component"} has no output ${name}`;
    case "estimate":
      return module?.thermalEstimates?.some((estimate) => estimate.name === name)
        ? undefined
        : `${module?.id ?? "this component"} has no thermal estimate ${name}`;
    case "failed":
      return module?.monitors?.some((monitor) => monitor.code === name)
        ? undefined
        : `${module?.id ?? "this component"} has no monitor with the code ${name}`;
    case "signal": {
      if (!scope.across) return "only a symptom may look at another module's signal; send a message instead";
      const other = index.components.get(reference.of);
      if (other?.kind !== "module") return `there is no module ${reference.of}`;
      return other.signals.some((signal) => signal.name === name)
        ? undefined
        : `${reference.of} has no signal ${name}`;
    }
    case "loadAmps": {
      if (!scope.across) return "only a symptom may look at a load current; use {amps} for an own output";
      const load = index.components.get(name);
      return load && loadKinds.includes(load.kind)
        ? undefined
        : `there is no motor, lamp, relay, resistor or fuse ${name} to take the current of`;
    }
    case "hertz":
      return module?.inputs?.some((input) => input.terminal === name && input.pulseSwingVolts !== undefined)
        ? undefined
        : `${module?.id ?? "this component"} counts no pulses at ${name}; give that input pulseSwingVolts`;
    case "speedOf":
    case "torqueOf":
    case "pulledIn": {
      const kind = reference.kind === "pulledIn" ? "relay" : "motor";
      if (!scope.across) return `only a symptom may look at the ${kind} ${name}`;
      return index.components.get(name)?.kind === kind ? undefined : `there is no ${kind} ${name}`;
    }
  }
}
