export { type SteeringPlacement, steeringPlacements } from "./power-steering/ratings";
export { carScenarios, drivingAndComfortScenarios, starterScenarios, steeringScenarios } from "./scenarios";
export { buildTrainingVehicle, type TrainingVehicleOptions, trainingVehicle } from "./vehicle";
