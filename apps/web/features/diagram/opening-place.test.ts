import { layoutSheet } from "@probeworthy/diagram/layout";
import { trainingVehicle } from "@probeworthy/training-vehicle";
import { expect, test } from "vitest";
import { openingPlace } from "./use-opening-view";

test("a drawing opens at the system's own module, or at a lead already placed", async () => {
  const laidOut = await layoutSheet(trainingVehicle, "power-steering");
  if (!laidOut.ok) throw new Error(laidOut.error.code);
  const sheet = laidOut.value;
  const module = sheet.symbols.find(({ id }) => id === "A1");
  const place = openingPlace(sheet, undefined);
  expect(place.x).toBeCloseTo((module?.x ?? Number.NaN) + (module?.width ?? 0) / 2);
  const post = sheet.testPoints.find(({ pointId }) => pointId === "G1:+");
  expect(openingPlace(sheet, "G1:+")).toEqual({ x: post?.x, y: post?.y });
});
