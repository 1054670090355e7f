import type { ScenarioDocument } from "@probeworthy/evaluation";
import { feedAndGroundScenarios } from "./feeds-and-grounds";
import { motorAndBusScenarios } from "./motor-and-bus";
import { steeringScenario } from "./scenario";
import { torqueSensorScenarios } from "./torque-sensor";

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

/** The jobs that come with the program. Ids and titles give no cause away: learners may see them. */
export const starterScenarios: ScenarioDocument[] = [...single, anyFault];
