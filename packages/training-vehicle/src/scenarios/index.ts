import type { ScenarioDocument } from "@probeworthy/evaluation";
import { comfortScenarios } from "./comfort";
import { engineTemperatureScenarios } from "./engine-temperature";
import { exteriorLightingScenarios } from "./exterior-lighting";
import { feedAndGroundScenarios } from "./feeds-and-grounds";
import { fuelPumpScenarios } from "./fuel-pump";
import { indicatorAndHornScenarios } from "./indicators-and-horn";
import { motorAndBusScenarios } from "./motor-and-bus";
import { pedalAndThrottleScenarios } from "./pedal-and-throttle";
import { radiatorFanScenarios } from "./radiator-fan";
import { candidate, steeringScenario } from "./scenario";
import { startingAndChargingScenarios } from "./starting-and-charging";
import { torqueSensorScenarios } from "./torque-sensor";
import { wheelAndNetworkScenarios } from "./wheels-and-network";

const single = [...feedAndGroundScenarios, ...torqueSensorScenarios, ...motorAndBusScenarios];

/** Every cause of the jobs above in one pool: the complaint gives nothing away. */
const anyFault: ScenarioDocument = steeringScenario({
  id: "something-with-the-steering",
  title: "Something with the steering",
  level: "advanced",
  learningGoal: "Work from an open complaint to one proven cause, or prove that there is none.",
  instructorNote:
    "Any fault of the other jobs, and the two that are normal. A good technician verifies the complaint in the condition it belongs to, reads all modules, and lets the first three measurements decide which part of the circuit is left.",
  complaints: [
    "There is something with the steering. Can you have a look?",
    "The steering is not as it should be. I cannot say more, my son drives the car.",
  ],
  pool: single.flatMap((scenario) => {
    const total = scenario.pool.reduce((sum, { weight }) => sum + weight, 0);
    return scenario.pool.map((entry) => ({ ...entry, weight: entry.weight / total }));
  }),
  limits: { shopMinutes: 120, actions: 200 },
  par: { shopMinutes: 16, readings: 10 },
});

/** Jobs about the rest of the car. */
export const carScenarios: ScenarioDocument[] = [
  ...startingAndChargingScenarios,
  ...exteriorLightingScenarios,
  ...indicatorAndHornScenarios,
  steeringScenario({
    id: "the-motor-hums",
    title: "The motor hums, the wheel is heavy",
    level: "advanced",
    learningGoal:
      "Understand a motor that has voltage, is whole, and draws nothing: it turns without a load.",
    instructorNote:
      "The code says that the current does not arrive, as if the motor were open. But there is full voltage across the motor and its ohms are right with X13 unplugged. A motor that is whole and draws hardly anything at full voltage runs free: its own voltage stands against the battery's. Everything electrical is proven right, so what is left is between motor and column: the coupling. Listening at the column says the same.",
    complaints: [
      "The steering went heavy with a crack, and the lamp is on. Under the dash something whirrs.",
      "It steers like a lorry, and the last garage says that the motor is broken.",
    ],
    pool: [
      candidate("assist-coupling-broken", "Coupling between assist motor and worm broken", 1, {
        kind: "couplingBroken",
        component: "M1",
      }),
    ],
    par: { shopMinutes: 12, readings: 6 },
  }),
];

/** Jobs about engine, wheels, network, blower, window and wiper. */
export const drivingAndComfortScenarios: ScenarioDocument[] = [
  ...radiatorFanScenarios,
  ...fuelPumpScenarios,
  ...pedalAndThrottleScenarios,
  ...engineTemperatureScenarios,
  ...wheelAndNetworkScenarios,
  ...comfortScenarios,
];

/** Jobs about the power steering: one for each thing to learn, and last the one that mixes their causes. */
export const steeringScenarios: ScenarioDocument[] = [...single, anyFault];

/** The jobs that come with the program. Ids and titles give no cause away: learners may see them. */
export const starterScenarios: ScenarioDocument[] = [
  ...steeringScenarios,
  ...carScenarios,
  ...drivingAndComfortScenarios,
];
