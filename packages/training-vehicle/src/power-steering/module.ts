import type { ControlModule } from "@probeworthy/vehicle";
import { message, volts } from "../expressions";
import { assumedRoadSpeed, sensorSupplyVolts } from "./figures";
import { powerSteeringEstimates, powerSteeringSignals } from "./law";
import { powerSteeringMonitors } from "./monitors";
import type { SteeringRatings } from "./ratings";

export const powerSteeringModule = (ratings: SteeringRatings): ControlModule => ({
  kind: "module",
  id: "A1",
  title: "Power steering module",
  place: "on the steering column, below the dash",
  zone: "column",
  terminals: [
    { name: "30", function: `battery feed for the assist motor, ${ratings.fuseAmps} A fuse F2` },
    { name: "31P", function: "power ground" },
    { name: "15", function: "ignition feed, 10 A fuse F11" },
    { name: "31S", function: "signal ground" },
    { name: "CH", function: "CAN high" },
    { name: "CL", function: "CAN low" },
    { name: "TS+", function: "torque sensor supply, 5 V" },
    { name: "TS-", function: "torque sensor ground" },
    { name: "T1", function: "torque signal 1" },
    { name: "T2", function: "torque signal 2" },
    { name: "M+", function: "assist motor, positive when assisting to the right" },
    { name: "M-", function: "assist motor, negative when assisting to the right" },
  ],
  ground: "31S",
  internalGroundOhms: 0.01,
  // Power ground and signal ground are not joined inside: motor current never passes through the thin ground wire.
  groundLinks: [{ terminal: "TS-", ohms: 0.05 }],
  supply: { terminal: "15", wakeVolts: 8, dropoutVolts: 5.5, quiescentAmps: 0, runningAmps: 0.65 },
  inputs: [
    { terminal: "T1", pull: { to: "ground", ohms: 470_000 } },
    { terminal: "T2", pull: { to: "ground", ohms: 470_000 } },
  ],
  rails: [{ name: "sensor", terminal: "TS+", volts: sensorSupplyVolts, limitAmps: 0.06 }],
  bus: {
    canHigh: "CH",
    canLow: "CL",
    dominantShare: 0.04,
    sends: [{ message: "steeringLamp", value: "steeringLamp" }],
    receives: [
      { message: "engineSpeed", from: "A2", substitute: 0 },
      { message: "roadSpeed", from: "A3", substitute: assumedRoadSpeed },
      { message: "steeringAngle", from: "A10", substitute: 0 },
    ],
  },
  thermalEstimates: powerSteeringEstimates(ratings),
  signals: powerSteeringSignals(ratings),
  outputs: [
    {
      kind: "bridge",
      name: "assist",
      plus: "M+",
      minus: "M-",
      feed: "30",
      return: "31P",
      targetAmps: "allowedAmps",
      bridgeOhms: 0.012,
      minimumFeedVolts: 3,
    },
  ],
  monitors: powerSteeringMonitors,
  scanValues: [
    { name: "torque", title: "Steering torque", unit: "N·m", decimals: 1, value: "torque" },
    { name: "twist", title: "Torsion bar twist", unit: "°", decimals: 1, value: "twist" },
    { name: "torque1", title: "Torque signal 1", unit: "V", decimals: 2, value: "torque1" },
    { name: "torque2", title: "Torque signal 2", unit: "V", decimals: 2, value: "torque2" },
    { name: "sensorSupply", title: "Torque sensor supply", unit: "V", decimals: 2, value: "sensorSupply" },
    { name: "batteryVolts", title: "Battery feed", unit: "V", decimals: 1, value: volts("30") },
    { name: "ignitionVolts", title: "Ignition feed", unit: "V", decimals: 1, value: volts("15") },
    { name: "targetAmps", title: "Motor current, target", unit: "A", decimals: 1, value: "targetAmps" },
    { name: "actualAmps", title: "Motor current, actual", unit: "A", decimals: 1, value: { amps: "assist" } },
    {
      name: "motorTemperature",
      title: "Motor temperature, computed",
      unit: "°C",
      decimals: 0,
      value: "motorTemperature",
    },
    {
      name: "steeringAngle",
      title: "Steering angle, received",
      unit: "°",
      decimals: 0,
      value: message("steeringAngle"),
    },
    { name: "roadSpeed", title: "Road speed", unit: "km/h", decimals: 0, value: "roadSpeed" },
    { name: "engineSpeed", title: "Engine speed", unit: "1/min", decimals: 0, value: "engineSpeed" },
  ],
});
