import type { Battery, OpenVoltsTable } from "../kinds/battery";
import { type BatteryParameters, batteryLaw } from "../laws/battery";
import { coldOhmsFactor, createOpenVoltsCurve, floodedOpenVolts } from "../physics/battery-charge";
import type { DevicePart, ElementDefinition } from "./definition";
import { celsius, notNegative, positive, share } from "./rules";

const floodedCurve = createOpenVoltsCurve(floodedOpenVolts);

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
  return {
    curve: element.openVolts ? createOpenVoltsCurve(element.openVolts) : floodedCurve,
    cellShare: (element.cells ?? 6) / 6,
    voltsAbove: element.voltsAbove ?? 0,
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
