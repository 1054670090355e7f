import type { Fault } from "../document/fault";
import { neighbours } from "../document/part-facts";
import type { Connector } from "../document/vehicle-document";
import type { VehicleIndex } from "../document/vehicle-index";
import { nodeOf, parsePoint } from "../points/point-ids";
import { err, ok, type Result } from "../result";
import type { VehicleError } from "../simulation/types";
import { checkFault } from "./check-fault";
import type { World } from "./network-builder";

/**
 * Resistance of a parted conductor or an empty socket, Ω. So far above the 1e-12 S leak of the solver that a floating
 * conductor reads microvolts, not half the battery.
 */
export const openOhms = 1e18;

/** Resistance that is there only while the world stands in a certain way. */
export interface Intermittent {
  readonly ohms: number;
  readonly holds: (world: World) => boolean;
}

/** Faults sorted by what they do. Several faults at one place add up. */
export interface FaultOverlay {
  /** Ohms to add at a conductor, contact, ground point, component terminal, filament or coil; `openOhms` for an open. */
  readonly series: ReadonlyMap<string, number>;
  readonly intermittent: ReadonlyMap<string, readonly Intermittent[]>;
  /** Resistors between two nodes. */
  readonly shorts: readonly { readonly a: string; readonly b: string; readonly ohms: number }[];
  readonly internalShorts: ReadonlyMap<
    string,
    readonly { readonly terminal: string; readonly other: string; readonly ohms: number }[]
  >;
  readonly chafed: ReadonlyMap<string, { readonly along: number; readonly ohms: number }>;
  /** Harness faces of cavities that hold each other's conductor. */
  readonly crossed: ReadonlyMap<string, string>;
  /** Sensor outputs by `B1:T1`: volts at a 5 V supply to add, or to stand at. */
  readonly sensorOffset: ReadonlyMap<string, number>;
  readonly sensorStuck: ReadonlyMap<string, number>;
  /** Shift of a sensor's quantity: °C, or share of its travel. */
  readonly sensorShift: ReadonlyMap<string, number>;
  readonly weldedContacts: ReadonlySet<string>;
  readonly contactOhms: ReadonlyMap<string, number>;
  readonly reversedDiodes: ReadonlySet<string>;
  readonly crossFilaments: ReadonlyMap<string, number>;
  readonly wrongWatts: ReadonlyMap<string, number>;
  readonly wornMotors: ReadonlyMap<string, number>;
  readonly seizedMotors: ReadonlySet<string>;
  /** Share of the turns that is left. */
  readonly shortedTurns: ReadonlyMap<string, number>;
  readonly brokenCouplings: ReadonlySet<string>;
  readonly wrongFuses: ReadonlyMap<string, number>;
  readonly belts: ReadonlyMap<string, number>;
  readonly openDiodes: ReadonlySet<string>;
  readonly regulatorOff: ReadonlyMap<string, number>;
  /** Module outputs by `A5 horn`, scan values by `A2 coolant`. */
  readonly deadOutputs: ReadonlySet<string>;
  readonly leakingOutputs: ReadonlyMap<string, number>;
  readonly wrongScanValues: ReadonlyMap<string, number>;
  readonly stuckScanValues: ReadonlyMap<string, number>;
  readonly silentNodes: ReadonlySet<string>;
  readonly sleeplessNodes: ReadonlySet<string>;
  /** Ohms of a module's or a resistor's bus termination; `openOhms` when it is missing. */
  readonly terminators: ReadonlyMap<string, number>;
}

/** Sorts faults into an overlay. Errors: `invalid_fault` with the path of the place or part that does not exist. */
export function buildFaultOverlay(
  faults: readonly Fault[],
  index: VehicleIndex,
  nominalVolts: number,
): Result<FaultOverlay, VehicleError> {
  const sorter = new FaultSorter(index, nominalVolts);
  for (const [position, fault] of faults.entries()) {
    const error = checkFault(fault, position, index);
    if (error) return err(error);
    sorter.take(fault);
  }
  return ok(sorter);
}

class FaultSorter implements FaultOverlay {
  readonly series = new Map<string, number>();
  readonly intermittent = new Map<string, Intermittent[]>();
  readonly shorts: { a: string; b: string; ohms: number }[] = [];
  readonly internalShorts = new Map<string, { terminal: string; other: string; ohms: number }[]>();
  readonly chafed = new Map<string, { along: number; ohms: number }>();
  readonly crossed = new Map<string, string>();
  readonly sensorOffset = new Map<string, number>();
  readonly sensorStuck = new Map<string, number>();
  readonly sensorShift = new Map<string, number>();
  readonly weldedContacts = new Set<string>();
  readonly contactOhms = new Map<string, number>();
  readonly reversedDiodes = new Set<string>();
  readonly crossFilaments = new Map<string, number>();
  readonly wrongWatts = new Map<string, number>();
  readonly wornMotors = new Map<string, number>();
  readonly seizedMotors = new Set<string>();
  readonly shortedTurns = new Map<string, number>();
  readonly brokenCouplings = new Set<string>();
  readonly wrongFuses = new Map<string, number>();
  readonly belts = new Map<string, number>();
  readonly openDiodes = new Set<string>();
  readonly regulatorOff = new Map<string, number>();
  readonly deadOutputs = new Set<string>();
  readonly leakingOutputs = new Map<string, number>();
  readonly wrongScanValues = new Map<string, number>();
  readonly stuckScanValues = new Map<string, number>();
  readonly silentNodes = new Set<string>();
  readonly sleeplessNodes = new Set<string>();
  readonly terminators = new Map<string, number>();

  constructor(
    private readonly index: VehicleIndex,
    private readonly nominalVolts: number,
  ) {}

  take(fault: Fault): void {
    switch (fault.kind) {
      case "open":
      case "backedOut":
        this.addSeries(fault.at, openOhms);
        break;
      case "seriesResistance":
      case "spreadTerminal":
        this.addSeries(fault.at, fault.ohms);
        break;
      case "internalOpen":
        this.addSeries(`${fault.component}:${fault.terminal}`, openOhms);
        break;
      case "coilOpen":
        this.addSeries(`${fault.component}#coil`, openOhms);
        break;
      case "lampOpen":
        this.addSeries(this.filamentPlace(fault), openOhms);
        break;
      case "corroded":
        for (const { cavity } of this.connector(fault.connector).cavities)
          this.addSeries(`${fault.connector}.${cavity}`, fault.ohms);
        break;
      case "intermittent": {
        const entry = { ohms: Math.min(openOhms, fault.ohms), holds: holdsWhen(fault) };
        this.intermittent.set(fault.at, [...(this.intermittent.get(fault.at) ?? []), entry]);
        break;
      }
      case "shortToGround":
        this.addShort(fault.at, "body", fault.ohms);
        break;
      case "shortToSupply":
        this.addShort(fault.at, fault.supply, fault.ohms);
        break;
      case "shortBetween":
      case "leak":
      case "terminatorExtra":
        this.addShort(fault.at, fault.other, fault.ohms);
        break;
      case "accessory":
        this.addShort(fault.at, fault.other, this.nominalVolts ** 2 / fault.watts);
        break;
      case "wetConnector":
        for (const [a, b] of neighbours(this.connector(fault.connector)))
          this.addShort(`${fault.connector}.${a}:h`, `${fault.connector}.${b}:h`, fault.ohms);
        break;
      case "chafed":
        this.chafed.set(fault.conductor, fault);
        break;
      case "crossedCavities":
        this.cross(fault.connector, fault.first, fault.second);
        break;
      case "internalShort":
        this.internalShorts.set(fault.component, [
          ...(this.internalShorts.get(fault.component) ?? []),
          fault,
        ]);
        break;
      case "contactResistive":
        add(this.contactOhms, fault.component, fault.ohms);
        break;
      case "contactWelded":
        this.weldedContacts.add(fault.component);
        break;
      case "diodeReversed":
        this.reversedDiodes.add(fault.component);
        break;
      case "crossFilament":
        this.crossFilaments.set(fault.component, fault.ohms);
        break;
      case "wrongBulb":
        this.wrongWatts.set(fault.component, fault.watts);
        break;
      case "motorWorn":
        add(this.wornMotors, fault.component, fault.ohms);
        break;
      case "motorSeized":
        this.seizedMotors.add(fault.component);
        break;
      case "motorShorted":
        this.shortedTurns.set(fault.component, fault.share);
        break;
      case "couplingBroken":
        this.brokenCouplings.add(fault.component);
        break;
      case "fuseWrongRating":
        this.wrongFuses.set(fault.component, fault.ratingAmps);
        break;
      case "beltSlips":
        this.belts.set(fault.component, fault.share);
        break;
      case "alternatorDiodeOpen":
        this.openDiodes.add(fault.component);
        break;
      case "regulatorOff":
        add(this.regulatorOff, fault.component, fault.volts);
        break;
      case "sensorOffset":
        add(this.sensorOffset, `${fault.component}:${fault.channel}`, fault.volts);
        break;
      case "sensorStuck":
        this.sensorStuck.set(`${fault.component}:${fault.channel}`, fault.volts);
        break;
      case "sensorShift":
        add(this.sensorShift, fault.component, fault.by);
        break;
      case "driverDead":
        this.deadOutputs.add(`${fault.component} ${fault.output}`);
        break;
      case "driverLeaking":
        this.leakingOutputs.set(`${fault.component} ${fault.output}`, fault.ohms);
        break;
      case "scanValueWrong":
        add(this.wrongScanValues, `${fault.component} ${fault.value}`, fault.by);
        break;
      case "scanValueStuck":
        this.stuckScanValues.set(`${fault.component} ${fault.value}`, fault.shows);
        break;
      case "silentNode":
        this.silentNodes.add(fault.component);
        break;
      case "staysAwake":
        this.sleeplessNodes.add(fault.component);
        break;
      case "terminatorMissing":
        this.terminators.set(fault.component, openOhms);
        break;
      case "terminatorDrifted":
        this.terminators.set(fault.component, fault.ohms);
        break;
      case "fuseBlown":
      case "fuseMissing":
      case "motorHot":
      case "weakBattery":
        break; // these act on the state, not on the network
    }
  }

  private addSeries(at: string, ohms: number): void {
    this.series.set(at, Math.min(openOhms, (this.series.get(at) ?? 0) + ohms));
  }

  private addShort(at: string, other: string, ohms: number): void {
    this.shorts.push({ a: this.node(at), b: this.node(other), ohms });
  }

  private node(id: string): string {
    const point = parsePoint(id, this.index);
    if (!point) throw new Error(`unchecked point ${id}`);
    return nodeOf(point, this.index);
  }

  private connector(id: string): Connector {
    const connector = this.index.connectors.get(id);
    if (!connector) throw new Error(`unchecked connector ${id}`);
    return connector;
  }

  private filamentPlace({ component, filament }: Extract<Fault, { kind: "lampOpen" }>): string {
    const kind = this.index.components.get(component)?.kind;
    if (kind !== "twoFilamentLamp") return `${component}:1`;
    return filament === "second" ? `${component}#second` : `${component}#first`;
  }

  private cross(connector: string, first: string, second: string): void {
    this.crossed.set(`${connector}.${first}:h`, `${connector}.${second}:h`);
    this.crossed.set(`${connector}.${second}:h`, `${connector}.${first}:h`);
  }
}

const add = (map: Map<string, number>, key: string, value: number): void => {
  map.set(key, (map.get(key) ?? 0) + value);
};

function holdsWhen(fault: Extract<Fault, { kind: "intermittent" }>): (world: World) => boolean {
  const { condition, is, above, below } = fault;
  if (is !== undefined) return (world) => world.choice(condition) === is;
  return (world) => {
    const value = world.readings.condition(condition);
    return (above === undefined || value > above) && (below === undefined || value < below);
  };
}
