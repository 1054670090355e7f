import type { ControlModule, Expression } from "@probeworthy/vehicle";
import {
  absolute,
  add,
  and,
  atLeast,
  atMost,
  choose,
  divide,
  failed,
  greater,
  heard,
  lookUp,
  message,
  multiply,
  not,
  or,
  signOf,
  subtract,
  volts,
} from "../expressions";
import { sensorSupplyVolts, spanPerDegree, speedCurve, thermalCurve, torsionBarStiffness } from "./figures";
import type { SteeringRatings } from "./ratings";

/** Codes that switch the assist off: the module no longer trusts its torque reading, its feed or its motor. */
export const assistStoppingCodes = [
  "C1401-14",
  "C1401-12",
  "C1402-14",
  "C1402-12",
  "C1403-1C",
  "C1404-16",
  "C1404-17",
  "C1411-13",
  "C1421-16",
  "C1421-17",
];

/** Codes that light the warning lamp although assist goes on. */
export const advisoryCodes = ["C1411-18", "C1422-16", "U0100-87", "U0129-87"];

/**
 * Without the engine module's message the steering would be lost at speed, so the module then takes the engine as
 * running while the battery feed shows that something charges it.
 */
const chargingVolts = 13;
const runningSpeed = 500;

export const powerSteeringSignals = ({ assistCurve }: SteeringRatings): ControlModule["signals"] => [
  { name: "ignitionVolts", value: volts("15") },
  { name: "batteryVolts", value: volts("30") },
  { name: "sensorSupply", value: volts("TS+") },
  { name: "torque1", value: volts("T1") },
  { name: "torque2", value: volts("T2") },
  { name: "sumError", value: absolute(subtract(add("torque1", "torque2"), "sensorSupply")) },
  {
    name: "inWindow",
    value: and(
      atLeast("torque1", 0.5),
      atMost("torque1", 4.5),
      atLeast("torque2", 0.5),
      atMost("torque2", 4.5),
    ),
  },
  {
    name: "twist",
    value: divide(divide(subtract("torque1", "torque2"), 2), multiply(sensorSupplyVolts, spanPerDegree)),
  },
  { name: "torque", value: multiply("twist", torsionBarStiffness) },
  { name: "engineSpeed", value: message("engineSpeed") },
  { name: "roadSpeed", value: message("roadSpeed") },
  {
    name: "engineRunning",
    value: choose(
      heard("engineSpeed"),
      greater("engineSpeed", runningSpeed),
      greater("batteryVolts", chargingVolts),
    ),
  },
  { name: "motorTemperature", value: { estimate: "winding" } },
  { name: "speedFactor", value: lookUp("roadSpeed", speedCurve) },
  { name: "thermalFactor", value: lookUp("motorTemperature", thermalCurve) },
  { name: "assistStopped", value: or(...assistStoppingCodes.map(failed)) },
  { name: "assistReady", value: and("engineRunning", "inWindow", not("assistStopped")) },
  {
    name: "targetAmps",
    value: choose(
      "assistReady",
      multiply(signOf("torque"), lookUp(absolute("torque"), assistCurve), "speedFactor"),
      0,
    ),
  },
  { name: "allowedAmps", value: multiply("targetAmps", "thermalFactor") },
  { name: "steeringLamp", value: or("assistStopped", ...advisoryCodes.map(failed)) },
];

/** Copper heat of the motor from the module's own measured current and its own estimate of the winding. */
const windingLoss = ({ windingOhmsAt20 }: SteeringRatings): Expression =>
  multiply(
    { amps: "assist" },
    { amps: "assist" },
    windingOhmsAt20,
    add(1, multiply(0.00393, subtract({ estimate: "winding" }, 20))),
  );

export const powerSteeringEstimates = (
  ratings: SteeringRatings,
): NonNullable<ControlModule["thermalEstimates"]> => [
  // The module has no ambient sensor and assumes 25 °C under the dash.
  { name: "winding", watts: windingLoss(ratings), ambient: 25, thermalOhms: 0.6, seconds: 180, motor: "M1" },
];
