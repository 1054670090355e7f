import type { Driver, DriverType } from "../kinds/driver";
import type { NodeName } from "../network";
import { mostThermalVolts, ratedCelsius, saturationOf } from "./rated-junction";

/** One switch of an output stage, with the names of its parts and of the two nodes between which it lies. */
export interface DriverSide {
  readonly isHigh: boolean;
  readonly isCommanded: boolean;
  readonly from: NodeName;
  readonly to: NodeName;
  readonly channel: string;
  readonly body: string;
  readonly blocking: string | undefined;
  readonly ohms: number;
  readonly limitAmps: number;
}

const types: readonly DriverType[] = ["highSide", "lowSide", "pushPull"];
const noNode = "";

/** The switches that the stage has, high side first. */
export function sidesOf(element: Driver): readonly DriverSide[] {
  const { id, type, output, supply = noNode, ground = noNode, on, enabled = true } = element;
  const shared = { ohms: warmOhms(element), limitAmps: element.limitAmps ?? Number.POSITIVE_INFINITY };
  const side = (name: string) => ({
    ...shared,
    channel: `${id}#${name}`,
    body: `${id}#${name}Body`,
    blocking: element.blockingVolts === undefined ? undefined : `${id}#${name}Blocking`,
  });
  const inner = (name: string) => (element.blockingVolts === undefined ? output : `${id}#${name}`);
  const sides: DriverSide[] = [];
  if (type !== "lowSide") {
    const to = inner("high");
    sides.push({ ...side("high"), isHigh: true, isCommanded: enabled && on, from: supply, to });
  }
  if (type !== "highSide") {
    const isCommanded = enabled && (type === "pushPull" ? !on : on);
    sides.push({ ...side("low"), isHigh: false, isCommanded, from: inner("low"), to: ground });
  }
  return sides;
}

const kelvin = (celsius: number): number => celsius + 273.15;

/** onOhms · (T / 298.15 K)^ohmsExponent. */
const warmOhms = ({ onOhms, celsius = ratedCelsius, ohmsExponent = 1.5 }: Driver): number =>
  onOhms * (kelvin(celsius) / kelvin(ratedCelsius)) ** ohmsExponent;

/** Saturation amps of the body diodes and of the blocking ones: rated at 25 °C, 2 mV less for each kelvin. */
export function driverSaturations(element: Driver) {
  const { bodyVolts = 0.8, blockingVolts, blockingAmps = 0.01, celsius = ratedCelsius } = element;
  const warm = (volts: number) => volts - 0.002 * (celsius - ratedCelsius);
  return {
    body: saturationOf(warm(bodyVolts), 1, 1, celsius),
    blocking:
      blockingVolts === undefined ? undefined : saturationOf(warm(blockingVolts), blockingAmps, 1, celsius),
  };
}

/** What no range of one number can say. */
export function checkDriver(element: Driver): { message: string; field: string } | undefined {
  const { type, supply, ground } = element;
  if (!types.includes(type)) return { message: `type must be one of ${types.join(", ")}.`, field: "type" };
  if (supply === undefined && (type !== "lowSide" || element.pullUpAmps !== undefined)) {
    return {
      message: "supply must name the node that the output is driven or pulled up from.",
      field: "supply",
    };
  }
  if (ground === undefined && (type !== "highSide" || element.pullDownAmps !== undefined)) {
    return {
      message: "ground must name the node that the output is driven or pulled down to.",
      field: "ground",
    };
  }
  if (element.tripSeconds !== undefined && element.limitAmps === undefined) {
    return {
      message: "limitAmps must be given where tripSeconds is: it says what an overload is.",
      field: "limitAmps",
    };
  }
  const saturations = driverSaturations(element);
  const range = `must leave a junction between 0 and ${mostThermalVolts} thermal volts at this temperature.`;
  if (saturations.body === undefined) return { message: `bodyVolts ${range}`, field: "bodyVolts" };
  if (element.blockingVolts !== undefined && saturations.blocking === undefined) {
    return { message: `blockingVolts ${range}`, field: "blockingVolts" };
  }
  return undefined;
}
