export { starterScenarios } from "./scenarios";
export { trainingVehicle } from "./vehicle";
