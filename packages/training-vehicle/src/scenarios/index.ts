import type { ScenarioDocument } from "@probeworthy/evaluation";

export const starterScenarios: ScenarioDocument[] = [];
