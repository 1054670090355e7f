import { starterScenarios, trainingVehicle } from "@probeworthy/training-vehicle";

/** What the seed reads of a document; the rest goes into the database as it is. */
interface StarterDocument {
  id: string;
  title: string;
}

/** The vehicle and the scenarios an organisation starts with. */
export interface StarterContent {
  vehicle: StarterDocument;
  scenarios: readonly (StarterDocument & { weights: unknown; passMark: number })[];
}

export const starterContent: StarterContent = { vehicle: trainingVehicle, scenarios: starterScenarios };
