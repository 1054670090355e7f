import { type BatteryParameters, batteryLaw } from "../laws/battery";
import type { NodeName } from "../network";
import {
  coldOhmsFactor,
  createOpenVoltsCurve,
  floodedOpenVolts,
  type OpenVoltsTable,
} from "../physics/battery-charge";
import type { DevicePart, ElementDefinition } from "./definition";
import { celsius, notNegative, positive, share } from "./rules";

/**
 * Lead-acid starter battery: open-circuit volts by charge and temperature, resistance by charge and temperature, charge
 * acceptance, and a dip under cranking that deepens over some seconds. Equations: laws/battery; curves and their sources:
 * physics/battery-charge. An operating point holds the state of charge and has the polarisation settled.
 */
export interface Battery {
  readonly kind: "battery";
  readonly id: string;
  readonly positive: NodeName;
  readonly negative: NodeName;
  readonly capacityAmpereHours: number;
  /** 0 flat to 1 full; default 1. A transient moves it. */
  readonly stateOfCharge?: number;
  /** Electrolyte, °C; default 25. */
  readonly celsius?: number;
  /** What answers at once, Ω, full at 25 °C; default 0.2 Ω / capacity in Ah (3.3 mΩ at 60 Ah; from memory 4 to 6 mΩ in all). */
  readonly ohms?: number;
  /** What follows with `polarisationSeconds`, Ω, full at 25 °C; default 0.1 Ω / capacity in Ah. */
  readonly polarisationOhms?: number;
  /** Default 5 s. */
  readonly polarisationSeconds?: number;
  /** Multiple of both resistances and of the acceptance resistance: worn plates; default 1. */
  readonly resistanceScale?: number;
  /** Cells that still work, of the six the curve is for; default 6. A shorted cell leaves 5; 12 make a 24 V battery. */
  readonly cells?: number;
  /** Added to the open-circuit volts, V at 6 cells: glass-mat types 0.1 to 0.2 (from memory); default 0. */
  readonly voltsAbove?: number;
  /** Open-circuit volts by charge, from 0 to 1; default the flooded battery of physics/battery-charge. */
  readonly openVolts?: OpenVoltsTable;
  /** Temperature at which `openVolts` holds, °C; default 25. */
  readonly openVoltsCelsius?: number;
}

const isTable = (table: OpenVoltsTable): boolean =>
  Array.isArray(table) &&
  table.length >= 2 &&
  table.every(
    (row, i) =>
      row.length === 2 &&
      row.every(Number.isFinite) &&
      (i === 0 || (row[0] > table[i - 1][0] && row[1] > table[i - 1][1])),
  ) &&
  table[0][0] === 0 &&
  table.at(-1)?.[0] === 1;

const cell = (element: Battery): string => `${element.id}#cells`;

function parametersOf(element: Battery): BatteryParameters {
  const { capacityAmpereHours, stateOfCharge = 1, resistanceScale = 1 } = element;
  const at = element.celsius ?? 25;
  const scale = resistanceScale * coldOhmsFactor(at);
  const table = (element.openVolts ?? floodedOpenVolts).map(
    ([charge, volts]) => [charge, volts + (element.voltsAbove ?? 0)] as const,
  );
  return {
    curve: createOpenVoltsCurve(table),
    cellShare: (element.cells ?? 6) / 6,
    kelvinAbove: at - (element.openVoltsCelsius ?? 25),
    ohms: scale * (element.ohms ?? 0.2 / capacityAmpereHours),
    polarisationOhms: scale * (element.polarisationOhms ?? 0.1 / capacityAmpereHours),
    polarisationSeconds: element.polarisationSeconds ?? 5,
    acceptanceScale: resistanceScale,
    capacityAmpereHours,
    stateOfCharge,
  };
}

export const batteryDefinition: ElementDefinition<Battery> = {
  fields: {
    capacityAmpereHours: positive,
    stateOfCharge: share,
    celsius,
    ohms: positive,
    polarisationOhms: notNegative,
    polarisationSeconds: positive,
    resistanceScale: positive,
    cells: positive,
    voltsAbove: notNegative,
    openVoltsCelsius: celsius,
  },
  required: ["capacityAmpereHours"],
  terminals: (element) => [element.positive, element.negative],
  refuse({ openVolts: table }) {
    if (table === undefined || isTable(table)) return undefined;
    return {
      message: "openVolts must be pairs [charge, volts] from charge 0 to charge 1, both rising.",
      field: "openVolts",
    };
  },
  parts(element): readonly DevicePart[] {
    const nodes = [element.positive, element.negative];
    return [{ kind: "device", id: cell(element), nodes, law: batteryLaw, parameters: parametersOf(element) }];
  },
  amps: (element) => [[cell(element), 1]],
  quantities: (element, _state, look) => ({
    stateOfCharge: look.internal(cell(element), "stateOfCharge"),
    voltsPolarisation: look.internal(cell(element), "voltsPolarisation"),
  }),
};
