import type { Component, ComponentOf } from "../document/component";
import type { Fault } from "../document/fault";
import { sensorChannels } from "../document/part-facts";
import { terminalsOf, type VehicleIndex } from "../document/vehicle-index";
import { parsePoint } from "../points/point-ids";
import type { VehicleError } from "../simulation/types";

/** Places that can be opened or given resistance: a conductor, a cavity, a ground point, a component terminal. */
export function isSeriesPlace(at: string, index: VehicleIndex): boolean {
  if (index.conductors.has(at) || index.groundPoints.has(at)) return true;
  if (at.includes(".")) return isCavity(at, index);
  const [owner = "", rest] = at.split(":");
  const component = index.components.get(owner);
  return component !== undefined && rest !== undefined && terminalsOf(component).includes(rest);
}

function isCavity(at: string, index: VehicleIndex): boolean {
  const [owner = "", rest] = at.split(".");
  return index.connectors.get(owner)?.cavities.some(({ cavity }) => cavity === rest) ?? false;
}

/** What is wrong with a fault on this vehicle, `invalid_fault` with the path of what does not exist; nothing when it fits. */
export function checkFault(fault: Fault, position: number, index: VehicleIndex): VehicleError | undefined {
  const problem = new FaultCheck(index).of(fault);
  return problem
    ? { code: "invalid_fault", path: `faults[${position}].${problem[0]}`, message: problem[1] }
    : undefined;
}

/** Field of the fault and what is wrong with it. */
type Problem = readonly [field: string, message: string] | undefined;

const kindWords: Partial<Record<Component["kind"], string>> = {
  fuse: "fuse",
  motor: "motor",
  battery: "battery",
  relay: "relay",
  chargingSource: "alternator",
  module: "control module",
  twoFilamentLamp: "two-filament lamp",
};

class FaultCheck {
  constructor(private readonly index: VehicleIndex) {}

  of(fault: Fault): Problem {
    switch (fault.kind) {
      case "open":
      case "seriesResistance":
        return this.series(fault.at);
      case "intermittent":
        return this.series(fault.at) ?? this.when(fault);
      case "backedOut":
      case "spreadTerminal":
        return isCavity(fault.at, this.index) ? undefined : ["at", `there is no cavity ${fault.at}`];
      case "shortToGround":
        return this.point(fault.at, "at");
      case "shortToSupply":
        return this.point(fault.at, "at") ?? this.point(fault.supply, "supply");
      case "shortBetween":
      case "leak":
      case "terminatorExtra":
      case "accessory":
        return this.point(fault.at, "at") ?? this.point(fault.other, "other");
      case "chafed":
        return this.index.conductors.has(fault.conductor)
          ? undefined
          : ["conductor", `there is no conductor ${fault.conductor}`];
      case "corroded":
      case "wetConnector":
        return this.connector(fault.connector);
      case "crossedCavities":
        return this.connector(fault.connector) ?? this.cavities(fault);
      case "fuseBlown":
      case "fuseMissing":
      case "fuseWrongRating":
        return this.part(fault.component, "fuse");
      case "coilOpen":
      case "contactWelded":
      case "contactResistive":
      case "diodeReversed":
        return this.part(fault.component, "relay");
      case "motorHot":
      case "motorWorn":
      case "motorSeized":
      case "motorShorted":
        return this.part(fault.component, "motor");
      case "couplingBroken": {
        const found = this.find(fault.component, "motor");
        return found?.gear ? undefined : ["component", `there is no motor with a gear ${fault.component}`];
      }
      case "weakBattery":
        return this.part(fault.component, "battery");
      case "beltSlips":
      case "alternatorDiodeOpen":
      case "regulatorOff":
        return this.part(fault.component, "chargingSource");
      case "crossFilament":
        return this.part(fault.component, "twoFilamentLamp");
      case "lampOpen":
        return this.oneOf(fault.component, ["lamp", "twoFilamentLamp", "ledLamp"], "lamp");
      case "wrongBulb":
        return this.oneOf(fault.component, ["lamp", "twoFilamentLamp"], "bulb");
      case "sensorShift":
        return this.oneOf(
          fault.component,
          ["thermistor", "positionSensor"],
          "temperature or position sensor",
        );
      case "sensorOffset":
      case "sensorStuck":
        return this.channel(fault);
      case "internalOpen":
        return this.terminal(fault.component, fault.terminal, "terminal");
      case "internalShort":
        return (
          this.terminal(fault.component, fault.terminal, "terminal") ??
          this.terminal(fault.component, fault.other, "other")
        );
      case "driverDead":
      case "driverLeaking": {
        const outputs = this.find(fault.component, "module")?.outputs?.map(({ name }) => name) ?? [];
        return this.part(fault.component, "module") ?? member(fault, "output", fault.output, outputs);
      }
      case "scanValueWrong":
      case "scanValueStuck": {
        const values = this.find(fault.component, "module")?.scanValues?.map(({ name }) => name) ?? [];
        return this.part(fault.component, "module") ?? member(fault, "value", fault.value, values);
      }
      case "silentNode": {
        const module = this.find(fault.component, "module");
        return module?.bus || module?.lin
          ? undefined
          : ["component", `there is no control module on a bus called ${fault.component}`];
      }
      case "staysAwake":
        return this.find(fault.component, "module")?.supply.sleep
          ? undefined
          : ["component", `there is no control module that sleeps called ${fault.component}`];
      case "terminatorMissing":
      case "terminatorDrifted":
        return this.find(fault.component, "module")?.bus?.terminationOhms !== undefined ||
          this.find(fault.component, "resistor") !== undefined
          ? undefined
          : ["component", `${fault.component} is no module with a terminator and no resistor`];
    }
  }

  private find<K extends Component["kind"]>(id: string, kind: K): ComponentOf<K> | undefined {
    const component = this.index.components.get(id);
    return component?.kind === kind ? (component as ComponentOf<K>) : undefined;
  }

  private part(id: string, kind: Component["kind"]): Problem {
    return this.find(id, kind) ? undefined : ["component", `there is no ${kindWords[kind] ?? kind} ${id}`];
  }

  private oneOf(id: string, kinds: readonly Component["kind"][], word: string): Problem {
    const kind = this.index.components.get(id)?.kind;
    return kind !== undefined && kinds.includes(kind)
      ? undefined
      : ["component", `there is no ${word} ${id}`];
  }

  private series(at: string): Problem {
    return isSeriesPlace(at, this.index)
      ? undefined
      : ["at", `${at} is no conductor, cavity, ground point or component terminal`];
  }

  private point(id: string, field: string): Problem {
    return parsePoint(id, this.index) ? undefined : [field, `there is no test point ${id}`];
  }

  private connector(id: string): Problem {
    return this.index.connectors.has(id) ? undefined : ["connector", `there is no connector ${id}`];
  }

  private cavities({ connector, first, second }: Extract<Fault, { kind: "crossedCavities" }>): Problem {
    const has = (cavity: string): boolean => isCavity(`${connector}.${cavity}`, this.index);
    if (!has(first)) return ["first", `${connector} has no cavity ${first}`];
    if (!has(second)) return ["second", `${connector} has no cavity ${second}`];
    return first === second ? ["second", "two different cavities are crossed"] : undefined;
  }

  private terminal(id: string, terminal: string, field: string): Problem {
    const component = this.index.components.get(id);
    if (!component) return ["component", `there is no component ${id}`];
    return terminalsOf(component).includes(terminal)
      ? undefined
      : [field, `${id} has no terminal ${terminal}`];
  }

  private channel({
    component: id,
    channel,
  }: Extract<Fault, { kind: "sensorOffset" | "sensorStuck" }>): Problem {
    const channels = sensorChannels(this.index.components.get(id));
    if (channels.length === 0) return ["component", `there is no torque or position sensor ${id}`];
    return channels.includes(channel)
      ? undefined
      : ["channel", `a channel of ${id} is ${channels.join(" or ")}`];
  }

  private when({ condition, is, above, below }: Extract<Fault, { kind: "intermittent" }>): Problem {
    const found = this.index.conditions.get(condition);
    if (!found) return ["condition", `there is no condition ${condition}`];
    if (found.kind === "choice")
      return found.options.some(({ value }) => value === is)
        ? undefined
        : ["is", `${condition} is one of ${found.options.map(({ value }) => value).join(", ")}`];
    return above === undefined && below === undefined
      ? ["above", `${condition} is a number: say above or below which it shows`]
      : undefined;
  }
}

const member = (
  fault: { readonly component: string },
  field: string,
  name: string,
  names: readonly string[],
): Problem =>
  names.includes(name)
    ? undefined
    : [field, `${fault.component} has no ${field} ${name}; it has ${names.join(", ") || "none"}`];
