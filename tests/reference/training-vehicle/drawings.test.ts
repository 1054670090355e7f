import {
  conductorsOnConductors,
  conductorsThroughSymbols,
  countCrossings,
  overlappingLabels,
  textsOutside,
} from "@probeworthy/diagram";
import { layoutSheet } from "@probeworthy/diagram/layout";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { expect, test } from "vitest";

/** Crossings a sheet of the training vehicle may have; one that gains a part may need more, one that is redrawn must not. */
const most: Readonly<Record<string, number>> = {
  "power-steering": 8,
  "starting-and-charging": 3,
  "exterior-lighting": 20,
  "indicators-and-horn": 8,
  "radiator-fan": 3,
  "fuel-pump": 2,
  "pedal-and-throttle": 1,
  "engine-temperature": 0,
  "wheel-speed": 1,
  "data-network": 20,
  blower: 0,
  "wiper-and-window": 8,
};

test("every system has its limit", () => {
  expect(Object.keys(most).sort()).toEqual(trainingVehicle.systems.map(({ id }) => id).sort());
});

test.each(Object.entries(most))(
  "%s crosses at most %i times, and nothing is covered or cut",
  async (id, crossings) => {
    const result = await layoutSheet(trainingVehicle, id);
    if (!result.ok) throw new Error(result.error.code);
    const sheet = result.value;
    expect(countCrossings(sheet)).toBeLessThanOrEqual(crossings);
    expect(conductorsThroughSymbols(sheet)).toEqual([]);
    expect(conductorsOnConductors(sheet)).toEqual([]);
    expect(overlappingLabels(sheet)).toEqual([]);
    expect(textsOutside(sheet)).toEqual([]);
  },
  60_000,
);
