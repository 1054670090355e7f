import { buildTrainingVehicle, steeringPlacements, trainingVehicle } from "@probeworthy/training-vehicle";
import { parseVehicle, prepareVehicle, settle, startState, validateVehicle } from "@probeworthy/vehicle";
import { describe, expect, it } from "vitest";
import { must, turning } from "./test-drive";

const ampsOf = (steering: (typeof steeringPlacements)[number]): number => {
  const vehicle = must(prepareVehicle(buildTrainingVehicle({ steering }), []));
  return must(settle(vehicle, must(startState(vehicle, turning(8))))).amps("M1");
};

describe("the placements of the steering motor", () => {
  it("column is the car as it comes", () => {
    expect(buildTrainingVehicle({ steering: "column" })).toEqual(trainingVehicle);
  });

  it.each(steeringPlacements)("%s parses and is protected like the car as it comes", (steering) => {
    const vehicle = buildTrainingVehicle({ steering });
    const parsed = parseVehicle(JSON.parse(JSON.stringify(vehicle)));
    expect(parsed.ok ? [] : parsed.error).toEqual([]);
    expect(validateVehicle(vehicle)).toEqual(validateVehicle(trainingVehicle));
  });

  it("ask more current the more force the motor works against, and get it", () => {
    const [column = 0, pinion = 0, rack = 0] = steeringPlacements.map(ampsOf);
    expect(column).toBeGreaterThan(40);
    expect(pinion).toBeGreaterThan(1.2 * column);
    expect(rack).toBeGreaterThan(1.2 * pinion);
  });
});
