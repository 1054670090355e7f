import { type HeatedMotorParameters, heatedMotorLaw, type MotorParameters, motorLaw } from "../laws/motor";
import type { NodeName } from "../network";
import type { DevicePart, ElementDefinition, Look } from "./definition";
import { celsius, finite, flag, notNegative, positive } from "./rules";

/**
 * Brushed direct-current motor with a constant field (permanent magnets): inrush, running, stall. A positive current into
 * `plus` turns it in the positive direction; reversed volts reverse it; turned from outside it generates. Equations and
 * sources: laws/motor. An operating point is the steady state, running or stalled; a transient starts from
 * `startAmps` and `startRadiansPerSecond`.
 */
export interface Motor {
  readonly kind: "motor";
  readonly id: string;
  readonly plus: NodeName;
  readonly minus: NodeName;
  /** Armature and brushes at 20 °C, Ω; follows the temperature law of copper. */
  readonly ohms: number;
  /** Armature inductance, H; default: 1 ms times `ohms`. */
  readonly henries?: number;
  /** Torque per ampere, N·m/A, and back-EMF per speed, V·s/rad: one number. */
  readonly motorConstant: number;
  /** Rotor and what turns with it, kg·m²; default 1e-4. */
  readonly inertia?: number;
  /** Friction proportional to speed, N·m·s/rad; default 0. */
  readonly viscousFriction?: number;
  /** Dry friction of brushes and bearings, N·m; default 0. Full from about 0.2 rad/s on. */
  readonly coulombFriction?: number;
  /** Load that opposes the motion whatever the speed (a seal, a gear), N·m; default 0. */
  readonly loadTorque?: number;
  /** Load proportional to speed, N·m·s/rad; default 0. */
  readonly loadPerSpeed?: number;
  /** Load growing with the square of the speed (a fan, a pump), N·m·s²/rad²; default 0. */
  readonly loadPerSpeedSquared?: number;
  /** Torque on the shaft from outside, N·m, in the positive direction (wind in a fan, a hanging weight); default 0. */
  readonly shaftTorque?: number;
  /** True for a seized rotor; default false. */
  readonly locked?: boolean;
  /** Drop of both brushes together at full current, V; default 0 (counted in `ohms`). */
  readonly brushVolts?: number;
  /** Winding temperature, °C; default 20. Where a heated motor starts from. */
  readonly celsius?: number;
  readonly startAmps?: number;
  readonly startRadiansPerSecond?: number;
  /**
   * Thermal resistances, K/W, and capacities, J/K, of winding and housing; all four or none. With them a transient
   * warms the winding, and an operating point does so when `heatInBalance` (default false: both temperatures are held).
   */
  readonly windingToHousing?: number;
  readonly housingToAmbient?: number;
  readonly windingCapacity?: number;
  readonly housingCapacity?: number;
  /** °C; default that of the winding. */
  readonly housingCelsius?: number;
  /** °C; default 20. */
  readonly ambientCelsius?: number;
  readonly heatInBalance?: boolean;
}

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

const heatOf = (element: Motor): HeatedMotorParameters => ({
  ...parametersOf(element),
  windingToHousing: element.windingToHousing ?? 1,
  housingToAmbient: element.housingToAmbient ?? 1,
  windingCapacity: element.windingCapacity ?? 1,
  housingCapacity: element.housingCapacity ?? 1,
  housingCelsius: element.housingCelsius ?? element.celsius ?? 20,
  ambientCelsius: element.ambientCelsius ?? 20,
  heatInBalance: element.heatInBalance ?? false,
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
  parts(element): readonly DevicePart[] {
    const part = { kind: "device", id: rotor(element), nodes: [element.plus, element.minus] } as const;
    return isHeated(element)
      ? [{ ...part, law: heatedMotorLaw, parameters: heatOf(element) }]
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
