export { type SteeringPlacement, steeringPlacements } from "./power-steering/ratings";
export { starterScenarios } from "./scenarios";
export { buildTrainingVehicle, type TrainingVehicleOptions, trainingVehicle } from "./vehicle";
