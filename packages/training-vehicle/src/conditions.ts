import type { ConditionDefinition } from "@probeworthy/vehicle";

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
];
