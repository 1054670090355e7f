import type { SwitchingPtc } from "../kinds/switching-ptc";
import { steppedCelsius, switchingPtcLaw } from "../laws/switching-ptc";
import { type SwitchingPtcCurve, tableCurve } from "../laws/switching-ptc-curve";
import type { ElementDefinition } from "./definition";
import { celsius, fraction, positive } from "./rules";

/** State in which the part's temperature follows its heat. */
const free = 1000;

/**
 * An operating point walks up to its balance: in state 0 the part is held at its start temperature, in state k at that k
 * steps up (down where k < 0), until the next step would lose more heat than it gains; then it is let go, and Newton's
 * method finds the balance close by. Each part sees a network of resistances on the way, however many others walk too.
 * Once let go it stays so: later solves go on from its last temperature.
 */
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
  parts: (element, state, timed) => {
    const ambientCelsius = element.ambientCelsius ?? 20;
    const startCelsius = element.startCelsius ?? ambientCelsius;
    const curve = curveOf(element);
    const held = timed || state === free ? {} : { heldCelsius: steppedCelsius(curve, startCelsius, state) };
    return [
      {
        kind: "device",
        id: `${element.id}#body`,
        nodes: [element.a, element.b],
        law: switchingPtcLaw,
        parameters: {
          curve,
          dissipation: element.wattsPerKelvin,
          heatCapacity: element.joulesPerKelvin ?? 20 * element.wattsPerKelvin,
          ambientCelsius,
          startCelsius,
          ...held,
        },
      },
    ];
  },
  amps: ({ id }) => [[`${id}#body`, 1]],
  guards: ({ id, a, b, wattsPerKelvin, ambientCelsius = 20 }, state, look, timed) => {
    if (timed || state === free) return [{ value: -1, next: free }];
    const part = `${id}#body`;
    const gained = (look.volts(a) - look.volts(b)) * look.amps(part);
    const surplus = gained - wattsPerKelvin * (look.internal(part, "celsius") - ambientCelsius);
    const direction = Math.sign(surplus);
    const goesOn = direction !== 0 && direction * state >= 0;
    return [{ value: 1, next: goesOn ? state + direction : free }];
  },
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
