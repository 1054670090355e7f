import type { Expression, VehicleDocument } from "@probeworthy/vehicle";
import {
  absolute,
  and,
  atLeast,
  choose,
  chosen,
  condition,
  divide,
  greater,
  less,
  lookUp,
  not,
  or,
  speedOf,
  subtract,
} from "../expressions";

type Symptom = VehicleDocument["symptoms"][number];

const keyOn = chosen("key", 2);
const starting = chosen("key", 3);
const engineRunning = greater(condition("engineSpeed"), 600);
const accelerator = condition("accelerator");
const coolant = condition("coolantTemperature");
/** Speed of a whole fan at the voltage that belongs to a temperature, rad/s. */
const mainFanExpected: readonly (readonly [celsius: number, speed: number])[] = [
  [100, 180],
  [104, 236],
  [108, 268],
];
const auxiliaryFanExpected = 235;
const mainFan = absolute(speedOf("M10"));
const auxiliaryFan = absolute(speedOf("M11"));
const pump = absolute(speedOf("M13"));

/** Below this a rotor stands, rad/s. */
const standing = 20;
/** Parts of the speed a whole fan would have: below them it stands, or blows too little. */
const still = 0.12;
const weak = 0.78;

const fan = (id: string, title: string, speed: Expression, expected: Expression): Symptom => ({
  id,
  title,
  value: choose(
    and(keyOn, atLeast(coolant, 100)),
    divide(speed, expected),
    choose(
      or(not(keyOn), less(coolant, 92)),
      // In START everything sags and nobody listens to a fan.
      choose(starting, -1, choose(greater(speed, standing), -2, -1)),
      -1,
    ),
  ),
  bands: [
    { below: -1.5, text: "turns although the engine is not hot or the key is off", normal: false },
    { below: -0.5, text: "as it should be, the engine is not hot", normal: true },
    { below: still, text: "stands still although the engine is hot", normal: false },
    { below: weak, text: "turns only slowly although the engine is hot", normal: false },
    { text: "turns strongly, the engine is hot", normal: true },
  ],
});

const fuelWanted = and(engineRunning, greater(accelerator, 45));
const module = (signal: string, of: string): Expression => ({ signal, of });

/** What a driver notices of fans, fuel, pedal and gauge. */
export const engineSymptoms: Symptom[] = [
  fan("radiatorFan", "Radiator fan", mainFan, lookUp(coolant, mainFanExpected)),
  fan("auxiliaryFan", "Auxiliary fan", auxiliaryFan, auxiliaryFanExpected),
  {
    id: "engineFires",
    title: "Engine when starting",
    value: choose(and(starting, greater(speedOf("M2"), 5)), pump, -1),
    bands: [
      { below: -0.5, text: "nobody is turning it over", normal: true },
      { below: 120, text: "turns over but does not fire", normal: false },
      { below: 300, text: "fires only after long cranking", normal: false },
      { text: "fires at once", normal: true },
    ],
  },
  {
    id: "enginePull",
    title: "Engine while driving",
    value: choose(
      engineRunning,
      choose(
        fuelWanted,
        choose(less(pump, 430), choose(less(pump, 120), 0, 2), 3),
        choose(less(pump, 120), 0, choose(less(pump, 240), 1, 3)),
      ),
      3,
    ),
    bands: [
      { below: 0.5, text: "dies away for want of fuel", normal: false },
      { below: 1.5, text: "idles roughly and hesitates", normal: false },
      { below: 2.5, text: "has no power when you press the pedal", normal: false },
      { text: "as it should be", normal: true },
    ],
  },
  {
    id: "fuelPumpSound",
    title: "Under the rear seat",
    value: and(greater(pump, standing), not(engineRunning), not(starting)),
    bands: [
      { below: 0.5, text: "nothing unusual to hear", normal: true },
      { text: "the fuel pump hums although the engine stands", normal: false },
    ],
  },
  {
    id: "throttleResponse",
    title: "Answer to the accelerator",
    value: choose(keyOn, choose(module("limpHome", "A2"), 2, 1), 0),
    bands: [
      { below: 0.5, text: "the key is not on", normal: true },
      { below: 1.5, text: "the engine follows the pedal", normal: true },
      { text: "the engine stays at a raised idle and takes no throttle", normal: false },
    ],
  },
  {
    id: "engineMessage",
    title: "Engine message in the cluster",
    value: choose(and(keyOn, module("awake", "A4")), choose(module("engineMessage", "A4"), 2, 1), 0),
    bands: [
      { below: 0.5, text: "the cluster is off", normal: true },
      { below: 1.5, text: "none", normal: true },
      { text: "“Engine: visit a workshop”", normal: false },
    ],
  },
  {
    id: "coolantGauge",
    title: "Coolant gauge",
    value: choose(and(keyOn, module("awake", "A4")), subtract(module("coolant", "A4"), coolant), 0),
    bands: [
      { below: -9, text: "shows colder than the engine is", normal: false },
      { below: 9, text: "shows what the engine feels like", normal: true },
      { text: "shows hotter than the engine is", normal: false },
    ],
  },
];
