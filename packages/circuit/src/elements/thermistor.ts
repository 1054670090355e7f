import type { Thermistor } from "../kinds/thermistor";
import { platinumOhms } from "../physics/platinum";
import { type SteinhartHart, steinhartHartOhms, type ThermistorPoint } from "../physics/steinhart-hart";
import { thermistorOhms } from "../physics/thermistor-table";
import type { ElementDefinition } from "./definition";
import { celsius, positive } from "./rules";

const leastOhms = 1e-6;
const mostOhms = 1e12;

/** Ohms of the sensor at its temperature, held between 1 µΩ and 1e12 Ω. */
export function thermistorElementOhms(element: Thermistor): number {
  const ohms = element.steinhartHart
    ? steinhartHartOhms(element.steinhartHart, element.celsius)
    : element.table
      ? thermistorOhms(element.table, element.celsius)
      : platinumOhms(element.celsius, element.platinumOhms);
  return Math.min(mostOhms, Math.max(leastOhms, ohms));
}

export const thermistorDefinition: ElementDefinition<Thermistor> = {
  fields: { celsius, platinumOhms: positive },
  required: ["celsius"],
  topological: ["platinumOhms"],
  terminals: ({ a, b }) => [a, b],
  refuse: (element) => refuseLaws(element) ?? refuseTable(element.table) ?? refuseLaw(element.steinhartHart),
  parts: (element) => [
    {
      kind: "resistor",
      id: `${element.id}#body`,
      a: element.a,
      b: element.b,
      ohms: thermistorElementOhms(element),
    },
  ],
  amps: ({ id }) => [[`${id}#body`, 1]],
  quantities: (element) => ({ ohms: thermistorElementOhms(element) }),
};

type Refusal = { readonly message: string; readonly field: string } | undefined;

function refuseLaws({ steinhartHart, table, platinumOhms: platinum }: Thermistor): Refusal {
  const given = [steinhartHart, table, platinum].filter((law) => law !== undefined).length;
  return given === 1
    ? undefined
    : { message: "Give exactly one of steinhartHart, table and platinumOhms.", field: "table" };
}

function refuseTable(table: readonly ThermistorPoint[] | undefined): Refusal {
  if (table === undefined) return undefined;
  const isPoint = (point: unknown): boolean =>
    Array.isArray(point) && point.length === 2 && celsius.test(point[0]) && positive.test(point[1]);
  if (!Array.isArray(table) || table.length < 2 || !table.every(isPoint)) {
    return { message: "table needs two points or more, each [°C above −273.15, Ω above 0].", field: "table" };
  }
  return new Set(table.map(([at]) => at)).size === table.length
    ? undefined
    : { message: "table has two points at one temperature; keep one of them.", field: "table" };
}

function refuseLaw(law: SteinhartHart | undefined): Refusal {
  if (law === undefined) return undefined;
  return Number.isFinite(law.a) && positive.test(law.b) && Number.isFinite(law.c)
    ? undefined
    : { message: "steinhartHart needs finite a and c, and b above 0.", field: "steinhartHart" };
}
