import type { Motor } from "../kinds/motor";
import { type HeatedMotorParameters, heatedMotorLaw, type MotorParameters, motorLaw } from "../laws/motor";
import type { DevicePart, ElementDefinition, Look } from "./definition";
import { celsius, finite, flag, notNegative, positive } from "./rules";

const heatFields = ["windingToHousing", "housingToAmbient", "windingCapacity", "housingCapacity"] as const;

const rotor = (element: Motor): string => `${element.id}#rotor`;
const isHeated = (element: Motor): boolean => element.windingToHousing !== undefined;

function parametersOf(element: Motor): MotorParameters {
  const coulombFriction = element.coulombFriction ?? 0;
  return {
    ohms: element.ohms,
    henries: element.henries ?? 1e-3 * element.ohms,
    motorConstant: element.motorConstant,
    inertia: element.inertia ?? 1e-4,
    viscousFriction: element.viscousFriction ?? 0,
    dryTorque: coulombFriction + (element.loadTorque ?? 0),
    coulombFriction,
    loadPerSpeed: element.loadPerSpeed ?? 0,
    loadPerSpeedSquared: element.loadPerSpeedSquared ?? 0,
    shaftTorque: element.shaftTorque ?? 0,
    locked: element.locked ?? false,
    brushVolts: element.brushVolts ?? 0,
    celsius: element.celsius ?? 20,
    startAmps: element.startAmps ?? 0,
    startRadiansPerSecond: element.startRadiansPerSecond ?? 0,
  };
}

const heatOf = (element: Motor, timed: boolean): HeatedMotorParameters => ({
  ...parametersOf(element),
  windingToHousing: element.windingToHousing ?? 1,
  housingToAmbient: element.housingToAmbient ?? 1,
  windingCapacity: element.windingCapacity ?? 1,
  housingCapacity: element.housingCapacity ?? 1,
  housingCelsius: element.housingCelsius ?? element.celsius ?? 20,
  ambientCelsius: element.ambientCelsius ?? 20,
  heatInBalance: !timed && (element.heatInBalance ?? false),
});

export const motorDefinition: ElementDefinition<Motor> = {
  fields: {
    ohms: positive,
    henries: positive,
    motorConstant: positive,
    inertia: positive,
    viscousFriction: notNegative,
    coulombFriction: notNegative,
    loadTorque: notNegative,
    loadPerSpeed: notNegative,
    loadPerSpeedSquared: notNegative,
    shaftTorque: finite,
    locked: flag,
    brushVolts: notNegative,
    celsius,
    startAmps: finite,
    startRadiansPerSecond: finite,
    windingToHousing: positive,
    housingToAmbient: positive,
    windingCapacity: positive,
    housingCapacity: positive,
    housingCelsius: celsius,
    ambientCelsius: celsius,
    heatInBalance: flag,
  },
  required: ["ohms", "motorConstant"],
  topological: heatFields,
  terminals: ({ plus, minus }) => [plus, minus],
  refuse(element) {
    const missing = heatFields.find((field) => element[field] === undefined);
    if (missing === undefined || heatFields.every((field) => element[field] === undefined)) return undefined;
    return { message: `${missing} must be given too: heat needs ${heatFields.join(", ")}.`, field: missing };
  },
  parts(element, _state, timed): readonly DevicePart[] {
    const part = { kind: "device", id: rotor(element), nodes: [element.plus, element.minus] } as const;
    return isHeated(element)
      ? [{ ...part, law: heatedMotorLaw, parameters: heatOf(element, timed) }]
      : [{ ...part, law: motorLaw, parameters: parametersOf(element) }];
  },
  amps: (element) => [[rotor(element), 1]],
  quantities(element, _state, look: Look) {
    const part = rotor(element);
    const amps = look.internal(part, "ampsArmature");
    return {
      ampsArmature: amps,
      radiansPerSecond: look.internal(part, "radiansPerSecond"),
      newtonMetres: element.motorConstant * amps,
      celsiusWinding: isHeated(element) ? look.internal(part, "celsiusWinding") : (element.celsius ?? 20),
      ...(isHeated(element) ? { celsiusHousing: look.internal(part, "celsiusHousing") } : {}),
    };
  },
};
