import type { ComponentOf } from "@probeworthy/vehicle";
import { add, condition, multiply } from "../expressions";
import { coolantTable, intakeTable } from "./temperature-figures";

const accelerator = multiply(condition("accelerator"), 0.01);

/** Two tracks on two supplies; the second gives half the voltage of the first, so that a bridge between them shows. */
export const pedal: ComponentOf<"positionSensor"> = {
  kind: "positionSensor",
  id: "B10",
  title: "Accelerator pedal sensor",
  place: "on the accelerator pedal",
  zone: "column",
  position: accelerator,
  tracks: [
    { supply: "1", signal: "2", ground: "3", atRest: 0.15, atFull: 0.79, trackOhms: 1600, outputOhms: 900 },
    { supply: "4", signal: "5", ground: "6", atRest: 0.075, atFull: 0.395, trackOhms: 1800, outputOhms: 900 },
  ],
};

/** The plate follows the pedal; tracks mirrored, both on one supply and one ground. */
export const throttleSensor: ComponentOf<"positionSensor"> = {
  kind: "positionSensor",
  id: "B11",
  title: "Throttle position sensor",
  place: "in the throttle body",
  zone: "engine",
  position: add(0.06, multiply(accelerator, 0.85)),
  tracks: [
    {
      supply: "5V",
      ground: "31",
      signal: "S1",
      atRest: 0.12,
      atFull: 0.88,
      trackOhms: 2000,
      outputOhms: 700,
    },
    {
      supply: "5V",
      ground: "31",
      signal: "S2",
      atRest: 0.88,
      atFull: 0.12,
      trackOhms: 2000,
      outputOhms: 700,
    },
  ],
};

/** Holds the plate against its spring: it stands still and draws a steady current. */
export const throttleMotor: ComponentOf<"motor"> = {
  kind: "motor",
  id: "M12",
  title: "Throttle motor",
  place: "in the throttle body",
  zone: "engine",
  windingOhmsAt20: 2.1,
  torquePerAmp: 0.02,
};

export const coolantSensor: ComponentOf<"thermistor"> = {
  kind: "thermistor",
  id: "B12",
  title: "Coolant temperature sensor",
  place: "thermostat housing",
  zone: "engine",
  temperature: condition("coolantTemperature"),
  table: coolantTable,
};

export const intakeSensor: ComponentOf<"thermistor"> = {
  kind: "thermistor",
  id: "B13",
  title: "Intake air temperature sensor",
  place: "intake manifold",
  zone: "engine",
  temperature: condition("intakeTemperature"),
  table: intakeTable,
};

/** 58 teeth a turn. */
export const crankSensor: ComponentOf<"passiveSpeedSensor"> = {
  kind: "passiveSpeedSensor",
  id: "B14",
  title: "Crankshaft sensor",
  place: "engine, at the flywheel",
  zone: "engine",
  coilOhms: 860,
  peakVoltsPerHertz: 0.004,
  hertz: multiply(condition("engineSpeed"), 58 / 60),
};
