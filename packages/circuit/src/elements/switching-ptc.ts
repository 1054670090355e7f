import type { SwitchingPtc } from "../kinds/switching-ptc";
import { switchingPtcLaw } from "../laws/switching-ptc";
import { type SwitchingPtcCurve, tableCurve } from "../laws/switching-ptc-curve";
import type { ElementDefinition } from "./definition";
import { celsius, fraction, positive } from "./rules";

export const switchingPtcDefinition: ElementDefinition<SwitchingPtc> = {
  fields: {
    coldOhms: positive,
    switchCelsius: celsius,
    coefficient: positive,
    hotShare: fraction,
    wattsPerKelvin: positive,
    joulesPerKelvin: positive,
    ambientCelsius: celsius,
    startCelsius: celsius,
  },
  required: ["wattsPerKelvin"],
  terminals: ({ a, b }) => [a, b],
  refuse: ({ table, coldOhms, switchCelsius }) => {
    if (table !== undefined) return refuseTable(table);
    return coldOhms === undefined || switchCelsius === undefined
      ? { message: "Give coldOhms and switchCelsius, or a table.", field: "coldOhms" }
      : undefined;
  },
  parts: (element) => {
    const ambientCelsius = element.ambientCelsius ?? 20;
    return [
      {
        kind: "device",
        id: `${element.id}#body`,
        nodes: [element.a, element.b],
        law: switchingPtcLaw,
        parameters: {
          curve: curveOf(element),
          dissipation: element.wattsPerKelvin,
          heatCapacity: element.joulesPerKelvin ?? 20 * element.wattsPerKelvin,
          ambientCelsius,
          startCelsius: element.startCelsius ?? ambientCelsius,
        },
      },
    ];
  },
  amps: ({ id }) => [[`${id}#body`, 1]],
  quantities: ({ id }, _state, look) => ({ celsius: look.internal(`${id}#body`, "celsius") }),
};

/** Siemens by temperature of an element that was not refused. */
export function curveOf(element: SwitchingPtc): SwitchingPtcCurve {
  if (element.table) return tableCurve(element.table);
  return {
    form: "smooth",
    coldSiemens: 1 / (element.coldOhms ?? Number.NaN),
    hotShare: element.hotShare ?? 1e-4,
    switchCelsius: element.switchCelsius ?? Number.NaN,
    coefficient: element.coefficient ?? 0.2,
  };
}

function refuseTable(table: unknown): { readonly message: string; readonly field: string } | undefined {
  const isPoint = (point: unknown): boolean =>
    Array.isArray(point) && point.length === 2 && celsius.test(point[0]) && positive.test(point[1]);
  const rises =
    Array.isArray(table) &&
    table.length >= 2 &&
    table.every((point, i) => isPoint(point) && (i === 0 || point[0] > table[i - 1][0]));
  return rises
    ? undefined
    : { message: "table needs two points or more [°C, Ω above 0] with °C rising.", field: "table" };
}
