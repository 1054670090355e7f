import {
  type ConditionDefinition,
  type Fault,
  prepareVehicle,
  type VehicleDocument,
} from "@probeworthy/vehicle";
import { representatives } from "./drawn-number";
import type { ScenarioDocument } from "./scenario";
import { concreteFault } from "./variant";

export interface ScenarioMessage {
  readonly severity: "error" | "warning";
  /** Path in the scenario, `pool[1].faults[0].at`. */
  readonly path: string;
  readonly message: string;
}

/**
 * Everything that keeps a scenario from being worked on this vehicle (errors), and what looks like an oversight
 * (warnings). An empty list means every variant it can draw is a car that can be simulated.
 */
export function checkScenario(scenario: ScenarioDocument, document: VehicleDocument): ScenarioMessage[] {
  return [
    ...checkNames(scenario, document),
    ...checkConditions(scenario, document.conditions),
    ...checkLimits(scenario),
    ...scenario.pool.flatMap((entry, index) => checkEntry(entry, `pool[${index}]`, document)),
  ];
}

const error = (path: string, message: string): ScenarioMessage => ({ severity: "error", path, message });
const warning = (path: string, message: string): ScenarioMessage => ({ severity: "warning", path, message });

function checkNames(scenario: ScenarioDocument, document: VehicleDocument): ScenarioMessage[] {
  const messages: ScenarioMessage[] = [];
  if (scenario.vehicle !== document.id) {
    messages.push(
      error("vehicle", `the vehicle is ${document.id}, the scenario asks for ${scenario.vehicle}`),
    );
  }
  if (!document.systems.some(({ id }) => id === scenario.system)) {
    const known = document.systems.map(({ id }) => id).join(", ");
    messages.push(error("system", `the vehicle has no system ${scenario.system}; it has ${known}`));
  }
  const ids = scenario.pool.map(({ id }) => id);
  for (const [index, id] of ids.entries()) {
    if (ids.indexOf(id) < index) messages.push(error(`pool[${index}].id`, `${id} is used twice`));
  }
  const meters = ["volts", "ohms", "continuity", "amps"] as const;
  if (!meters.some((name) => scenario.instruments.includes(name))) {
    messages.push(warning("instruments", "without a meter function nothing can be measured"));
  }
  for (const [index, name] of scenario.instruments.entries()) {
    if (scenario.instruments.indexOf(name) < index) {
      messages.push(warning(`instruments[${index}]`, `${name} is listed twice`));
    }
  }
  return messages;
}

function checkConditions(
  scenario: ScenarioDocument,
  definitions: readonly ConditionDefinition[],
): ScenarioMessage[] {
  return Object.entries(scenario.startConditions).flatMap(([name, value]) => {
    const path = `startConditions.${name}`;
    const condition = definitions.find((candidate) => candidate.name === name);
    if (condition === undefined) {
      const known = definitions.map((candidate) => candidate.name).join(", ");
      return [error(path, `the vehicle has no condition ${name}; it has ${known}`)];
    }
    if (condition.kind === "choice") {
      const known = condition.options.map((option) => option.value);
      return known.includes(String(value)) && typeof value === "string"
        ? []
        : [error(path, `${name} is one of ${known.join(", ")}`)];
    }
    const { minimum, maximum, unit } = condition;
    return typeof value === "number" && value >= minimum && value <= maximum
      ? []
      : [error(path, `${name} is a number from ${minimum} to ${maximum} ${unit}`.trim())];
  });
}

function checkLimits({ limits, par }: ScenarioDocument): ScenarioMessage[] {
  const messages: ScenarioMessage[] = [];
  if (par.shopMinutes > limits.shopMinutes) {
    messages.push(error("par.shopMinutes", "par is more than the shop time that is allowed"));
  }
  // A reading takes two leads and the reading itself.
  if (par.readings * 3 > limits.actions) {
    messages.push(
      warning("limits.actions", `${par.readings} readings need about ${par.readings * 3} actions`),
    );
  }
  return messages;
}

function checkEntry(
  entry: ScenarioDocument["pool"][number],
  path: string,
  document: VehicleDocument,
): ScenarioMessage[] {
  const messages: ScenarioMessage[] = [];
  if (entry.faults.length === 0 && entry.normal !== true) {
    messages.push(warning(`${path}.faults`, "no fault: the right cause will be that it works as designed"));
  }
  // Both ends of every range: what holds there holds between.
  for (const end of [0, -1]) {
    const faults: Fault[] = [];
    for (const [index, template] of entry.faults.entries()) {
      const fault = concreteFault(template, (_field, range) => representatives(range).at(end) ?? Number.NaN);
      if (fault.ok) faults.push(fault.value);
      else {
        const inner = [`${path}.faults[${index}]`, fault.error.path].filter(Boolean).join(".");
        messages.push(error(inner, fault.error.message));
      }
    }
    if (messages.some(({ severity }) => severity === "error")) return messages;
    const prepared = prepareVehicle(document, faults);
    if (prepared.ok) continue;
    if (prepared.error.code === "invalid_document") {
      return [...messages, error("vehicle", "the vehicle document cannot be simulated")];
    }
    const inner = "path" in prepared.error ? `${path}.${prepared.error.path}` : path;
    return [...messages, error(inner, prepared.error.message)];
  }
  return messages;
}
