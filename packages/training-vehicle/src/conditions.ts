import type { ConditionDefinition } from "@probeworthy/vehicle";

type Choices = readonly (readonly [value: string, title: string])[];

/** A control with named positions; the first is the one the car stands in. */
const choice = (group: string, name: string, title: string, options: Choices): ConditionDefinition => ({
  kind: "choice",
  name,
  title,
  options: options.map(([value, text]) => ({ value, title: text })),
  initial: options[0]?.[0] ?? "",
  group,
});

type Range = readonly [minimum: number, maximum: number, step: number, initial: number];

const number = (
  group: string,
  name: string,
  title: string,
  unit: string,
  [minimum, maximum, step, initial]: Range,
): ConditionDefinition => ({
  kind: "number",
  name,
  title,
  unit,
  minimum,
  maximum,
  step,
  initial,
  group,
});

const driving = "Driving";
const lights = "Lights and horn";
const comfort = "Comfort";
const temperatures = "Temperatures";

/**
 * What the technician can set. The engine turns only with the key on (in START the starter turns it, too slowly to
 * count as running), so "key on, engine off" is `key: on` with `engineSpeed: 0`.
 */
export const conditions: ConditionDefinition[] = [
  {
    kind: "choice",
    name: "key",
    title: "Key position",
    options: [
      { value: "off", title: "Off" },
      { value: "accessory", title: "Accessory" },
      { value: "on", title: "On" },
      { value: "start", title: "Start" },
    ],
    initial: "off",
  },
  {
    kind: "number",
    name: "engineSpeed",
    title: "Engine speed",
    unit: "1/min",
    minimum: 0,
    maximum: 5000,
    step: 50,
    initial: 0,
    onlyWhen: { condition: "key", is: ["on"] },
  },
  {
    kind: "number",
    name: "roadSpeed",
    title: "Road speed",
    unit: "km/h",
    minimum: 0,
    maximum: 140,
    step: 5,
    initial: 0,
  },
  {
    kind: "number",
    name: "steeringEffort",
    title: "Effort at the steering wheel (right is positive)",
    unit: "N·m",
    minimum: -10,
    maximum: 10,
    step: 0.5,
    initial: 0,
  },
  {
    kind: "number",
    name: "ambientTemperature",
    title: "Ambient temperature",
    unit: "°C",
    minimum: -20,
    maximum: 45,
    step: 1,
    initial: 22,
    fixed: true,
  },
  number(driving, "accelerator", "Accelerator pedal", "%", [0, 100, 5, 0]),
  choice(driving, "brakePedal", "Brake pedal", [
    ["released", "Released"],
    ["pressed", "Pressed"],
  ]),
  number(driving, "steeringAngle", "Steering wheel angle (right is positive)", "°", [-540, 540, 10, 0]),
  choice(driving, "doors", "Doors", [
    ["closed", "Closed"],
    ["open", "Driver's door open"],
  ]),
  choice(lights, "lightSwitch", "Light switch", [
    ["off", "Off"],
    ["side", "Side lamps"],
    ["dipped", "Dipped beam"],
  ]),
  choice(lights, "mainBeam", "Main beam", [
    ["off", "Off"],
    ["on", "On"],
  ]),
  choice(lights, "indicator", "Indicators", [
    ["off", "Off"],
    ["left", "Left"],
    ["right", "Right"],
    ["hazard", "Hazard warning"],
  ]),
  choice(lights, "reverse", "Reverse gear", [
    ["off", "Not engaged"],
    ["on", "Engaged"],
  ]),
  choice(lights, "horn", "Horn button", [
    ["rest", "At rest"],
    ["pressed", "Pressed"],
  ]),
  choice(lights, "trailer", "Trailer", [
    ["none", "None"],
    ["coupled", "Coupled"],
  ]),
  choice(comfort, "blowerStage", "Blower", [
    ["off", "Off"],
    ["one", "Stage 1"],
    ["two", "Stage 2"],
    ["three", "Stage 3"],
    ["four", "Stage 4"],
  ]),
  choice(comfort, "windowSwitch", "Window switch", [
    ["rest", "At rest"],
    ["up", "Up"],
    ["down", "Down"],
  ]),
  number(comfort, "windowPosition", "Window opening", "%", [0, 100, 5, 0]),
  choice(comfort, "wiperStage", "Wipers", [
    ["off", "Off"],
    ["slow", "Slow"],
    ["fast", "Fast"],
  ]),
  number(temperatures, "coolantTemperature", "Coolant temperature", "°C", [-20, 120, 1, 88]),
  number(temperatures, "intakeTemperature", "Intake air temperature", "°C", [-20, 80, 1, 30]),
  choice("Harness", "harnessMoved", "Harness moved by hand", [
    ["still", "Nothing moved"],
    ["engineBay", "Engine bay harness"],
    ["bulkhead", "Harness at the bulkhead"],
    ["column", "Harness at the column"],
    ["dash", "Dash harness"],
    ["door", "Door harness"],
    ["tail", "Tail harness"],
  ]),
];
